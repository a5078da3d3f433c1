'use client'
import { useEffect, useState } from 'react'
import type { BenchCasting } from '@/lib/core/options/question-of'

/**
 * The record of the casting that is asked about. Each is fetched once; until it is here the last one is not shown for it.
 */
export function useBenchCasting(castingId: string, first: BenchCasting | null) {
  const [known, setKnown] = useState<ReadonlyMap<string, BenchCasting | null>>(
    new Map(first ? [[first.id, first]] : []),
  )
  const missing = castingId !== '' && !known.has(castingId)
  useEffect(() => {
    if (!missing) return
    const stop = new AbortController()
    const keep = (casting: BenchCasting | null) => setKnown((before) => new Map(before).set(castingId, casting))
    fetch(`/api/cut-bench/${encodeURIComponent(castingId)}`, { signal: stop.signal })
      .then(async (response) => keep(response.ok ? ((await response.json()) as BenchCasting) : null))
      .catch(() => {
        if (!stop.signal.aborted) keep(null)
      })
    return () => stop.abort()
  }, [castingId, missing])
  const casting = known.get(castingId) ?? null
  return { casting, loading: missing, failed: castingId !== '' && known.has(castingId) && casting === null }
}
