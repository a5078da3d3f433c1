'use client'
import { useEffect, useState } from 'react'
import type { PricePick } from '@/lib/core/money/price-pick'
import type { CastingPick } from '@/lib/use-cases/castings/find-castings'
import type { FoundCustomer } from '@/lib/use-cases/customers/find-customers'
import type { Found } from '@/lib/use-cases/find/find-anything'
import type { HeadHit } from '@/lib/use-cases/find/hits'
import type { VendorPick } from '@/lib/use-cases/vendors/find-vendors'

type Answers = {
  anything: Found
  castings: CastingPick[]
  customers: FoundCustomer[]
  heads: HeadHit[]
  prices: PricePick[]
  vendors: VendorPick[]
}
/** What a picker picks from, and what a line of it is. */
export type Picked = Pick<Answers, 'castings' | 'prices' | 'vendors'>

const pauseMs = 150

/** What the server finds for the text, once typing pauses; null: nothing asked, or no answer yet. */
export function useFound<What extends keyof Answers>(what: What, text: string): Answers[What] | null {
  const [answer, setAnswer] = useState<{ q: string; found: Answers[What] } | null>(null)
  const q = text.trim()

  useEffect(() => {
    if (q.length < 2) return
    const asking = new AbortController()
    const timer = setTimeout(async () => {
      const found = await ask(what, q, asking.signal)
      if (found && !asking.signal.aborted) setAnswer({ q, found })
    }, pauseMs)
    return () => {
      clearTimeout(timer)
      asking.abort()
    }
  }, [what, q])

  return answer?.q === q ? answer.found : null
}

/** No answer (no network, signed out) shows nothing: sending the form says what is wrong. */
async function ask<What extends keyof Answers>(
  what: What,
  q: string,
  signal: AbortSignal,
): Promise<Answers[What] | null> {
  const asked = new URLSearchParams({ what, q })
  const answer = await fetch(`/api/find?${asked}`, { signal, cache: 'no-store' }).catch(() => null)
  return answer?.ok ? ((await answer.json()) as Answers[What]) : null
}
