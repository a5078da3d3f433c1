import { useEffect } from 'react'
import { keepShell } from './names'

/** Registers the worker where the browser allows one, and has it keep the page of whoever is signed in. */
export function useWorker(): void {
  useEffect(() => {
    if (process.env.NODE_ENV !== 'production' || !window.isSecureContext || !('serviceWorker' in navigator)) return
    void navigator.serviceWorker
      .register('/sw.js')
      .then(() => navigator.serviceWorker.ready)
      .then(({ active }) => active?.postMessage(keepShell))
      // Without it everything works while the page is open.
      .catch(() => {})
  }, [])
}
