'use client'
import { useEffect, useState } from 'react'
import type { AlikeInput } from '@/lib/schemas/alike'
import type { AlikeSeen } from '@/lib/use-cases/customers/see-alike'

const pauseMs = 300
const none: AlikeSeen = { customers: [], heads: [] }

/**
 * Whom and what the typed customer and heads may be, once typing pauses. No answer (no network, signed out) is none: the
 * server asks again before it books.
 */
export function useAlike(typed: AlikeInput): AlikeSeen {
  const asked = JSON.stringify(typed)
  const [answer, setAnswer] = useState<{ asked: string; seen: AlikeSeen }>({ asked: '', seen: none })

  useEffect(() => {
    const asking = new AbortController()
    const timer = setTimeout(async () => {
      const seen = await ask(asked, asking.signal)
      if (seen && !asking.signal.aborted) setAnswer({ asked, seen })
    }, pauseMs)
    return () => {
      clearTimeout(timer)
      asking.abort()
    }
  }, [asked])

  return answer.asked === asked ? answer.seen : none
}

async function ask(body: string, signal: AbortSignal): Promise<AlikeSeen | null> {
  const headers = { 'Content-Type': 'application/json' }
  const answer = await fetch('/api/alike', { method: 'POST', headers, body, signal, cache: 'no-store' }).catch(
    () => null,
  )
  return answer?.ok ? ((await answer.json()) as AlikeSeen) : null
}
