import { useEffect } from 'react'

/** So long after the screen stands: what it asked for itself comes first. */
const waitMs = 500

/** Fetches the parts that come later while nobody waits for them. */
export function useLoadAhead(): void {
  useEffect(() => {
    let stopped = false
    const load = () => import('./load-ahead').then(({ loadAhead }) => loadAhead(() => stopped)).catch(() => {})
    const timer = setTimeout(() => void load(), waitMs)
    return () => {
      stopped = true
      clearTimeout(timer)
    }
  }, [])
}
