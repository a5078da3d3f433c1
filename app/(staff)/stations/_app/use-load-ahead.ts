import { useEffect } from 'react'
import { useHere } from './here'

/** So long after the screen stands: what it asked for itself comes first. */
const waitMs = 500

/** Fetches the parts that come later while nobody waits for them, and then looks out for another `build`. */
export function useLoadAhead(build: string): void {
  const here = useHere()
  useEffect(() => {
    let stop = () => {}
    const timer = setTimeout(() => {
      void import('./load-ahead').then(({ loadAhead }) => (stop = loadAhead(here, build))).catch(() => {})
    }, waitMs)
    return () => {
      clearTimeout(timer)
      stop()
    }
  }, [here, build])
}
