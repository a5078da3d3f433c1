'use client'
import { useEffect, useState, useTransition } from 'react'
import { Notice } from './notice'

/** Long enough that the page stands; then what is likely to be asked for is fetched, while the network is there. */
const quietMs = 2500

/**
 * Code that a page needs only once something is tapped. It is fetched when the page has come to rest, or at the tap;
 * `load` hands it over when it is there. `fetchModule` must be the same function at every render.
 */
export function useLazyModule<Module>(fetchModule: () => Promise<Module>) {
  const [pending, start] = useTransition()
  const [failed, setFailed] = useState(false)
  useEffect(() => {
    // Whether it came is found out at the tap.
    const timer = setTimeout(() => void fetchModule().catch(() => undefined), quietMs)
    return () => clearTimeout(timer)
  }, [fetchModule])
  const load = (use: (module: Module) => void) =>
    start(async () => {
      const module = await fetchModule().catch(() => null)
      setFailed(module === null)
      if (module !== null) use(module)
    })
  return { load, pending, failed }
}

export const NotFetched = () => (
  <Notice kind="caution">This could not be fetched: there is no network. Tap again when it is back.</Notice>
)
