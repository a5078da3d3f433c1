'use client'
import { useEffect, useState } from 'react'

/** As late as the second of two slow taps comes. */
const settleMs = 2000

/**
 * Whether what stands here may be tapped. What takes the place of another comes up under the finger that made it come, so
 * for a while the second of two taps finds nothing to do. `what` names what stands here; a page that opens with it does
 * not wait.
 */
export function useSettled(what: string): boolean {
  const [settled, setSettled] = useState(what)
  useEffect(() => {
    const timer = setTimeout(() => setSettled(what), settleMs)
    return () => clearTimeout(timer)
  }, [what])
  return settled === what
}
