'use client'
import { useCallback, useEffect, useState } from 'react'

const tickMs = 250

/** Counts a pause down, in whole seconds; 0: over. */
export function useWait(firstMs: number) {
  const [endMs, setEndMs] = useState<number | null>(null)
  const [leftMs, setLeftMs] = useState(firstMs)
  const startWait = useCallback((ms: number) => {
    setEndMs(Date.now() + ms)
    setLeftMs(ms)
  }, [])

  useEffect(() => startWait(firstMs), [startWait, firstMs])
  useEffect(() => {
    if (endMs === null || leftMs <= 0) return
    const timer = setTimeout(() => setLeftMs(endMs - Date.now()), tickMs)
    return () => clearTimeout(timer)
  }, [endMs, leftMs])

  return { waitS: Math.max(0, Math.ceil(leftMs / 1000)), startWait }
}
