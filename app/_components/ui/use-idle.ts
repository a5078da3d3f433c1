import { useEffect, useState } from 'react'

/** True once the browser has drawn what comes first and has nothing to do. */
export function useIdle(): boolean {
  const [idle, setIdle] = useState(false)
  useEffect(() => {
    const calm = () => setIdle(true)
    // Safari has no idle callback.
    if (!('requestIdleCallback' in window)) {
      const timer = setTimeout(calm, 200)
      return () => clearTimeout(timer)
    }
    const id = requestIdleCallback(calm, { timeout: 1000 })
    return () => cancelIdleCallback(id)
  }, [])
  return idle
}
