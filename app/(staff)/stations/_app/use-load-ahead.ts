import { useEffect } from 'react'
import { useHere } from './here'

/** So long after the screen stands: what it asked for itself comes first. */
const waitMs = 500

/**
 * Fetches the parts that come later while nobody waits for them, and then looks out for another `build`. `isThere`: what
 * the screen shows has come; over a slow network it comes first.
 */
export function useLoadAhead(build: string, isThere: boolean): void {
  const here = useHere()
  useEffect(() => {
    if (!isThere) return
    let stop = () => {}
    const timer = setTimeout(() => {
      void import('./load-ahead').then(({ loadAhead }) => (stop = loadAhead(here, build))).catch(() => {})
    }, waitMs)
    return () => {
      clearTimeout(timer)
      stop()
    }
  }, [here, build, isThere])
}
