import { useEffect, useState } from 'react'

/** Calls once the browser has nothing to do, after a second at the latest. Gives back how to stop. */
export function whenIdle(call: () => void): () => void {
  // Safari has no idle callback.
  if (!('requestIdleCallback' in window)) {
    const timer = setTimeout(call, 200)
    return () => clearTimeout(timer)
  }
  const id = requestIdleCallback(call, { timeout: 1000 })
  return () => cancelIdleCallback(id)
}

/** True once the browser has drawn what comes first and has nothing to do. */
export function useIdle(): boolean {
  const [idle, setIdle] = useState(false)
  useEffect(() => whenIdle(() => setIdle(true)), [])
  return idle
}
