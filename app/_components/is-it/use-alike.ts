'use client'
import { useEffect, useState } from 'react'
import type { Refusal } from '@/lib/core/errors'
import type { AlikeInput } from '@/lib/schemas/alike'
import type { AlikeSeen } from '@/lib/use-cases/customers/see-alike'

const pauseMs = 300

type Answer = { readonly asked: string; readonly after: Refusal | null; readonly seen: AlikeSeen }

/**
 * Whom and what the typed customer and heads may be, once typing pauses; null: not known. No answer (no network, signed
 * out) leaves it so: the server asks again before it books. `refusal`: of a booking that named somebody on record. What was
 * seen before may be old then, so it is asked again.
 */
export function useAlike(typed: AlikeInput, refusal: Refusal | null): AlikeSeen | null {
  const asked = JSON.stringify(typed)
  const after = refusal?.alike ? refusal : null
  const [answer, setAnswer] = useState<Answer | null>(null)
  const known = answer?.asked === asked && (after === null || answer.after === after) ? answer.seen : null
  const isKnown = known !== null

  useEffect(() => {
    if (isKnown) return
    const asking = new AbortController()
    const timer = setTimeout(async () => {
      const seen = await ask(asked, asking.signal)
      if (seen && !asking.signal.aborted) setAnswer({ asked, after, seen })
    }, pauseMs)
    return () => {
      clearTimeout(timer)
      asking.abort()
    }
  }, [asked, after, isKnown])

  return known
}

async function ask(body: string, signal: AbortSignal): Promise<AlikeSeen | null> {
  const headers = { 'Content-Type': 'application/json' }
  const answer = await fetch('/api/alike', { method: 'POST', headers, body, signal, cache: 'no-store' }).catch(
    () => null,
  )
  return answer?.ok ? ((await answer.json()) as AlikeSeen) : null
}
