import { keepShell } from './names'

/** Registers the worker where the browser allows one, and has it keep the page of whoever is signed in. */
export async function registerWorker(): Promise<void> {
  if (process.env.NODE_ENV !== 'production' || !window.isSecureContext || !('serviceWorker' in navigator)) return
  await navigator.serviceWorker.register('/sw.js')
  const { active } = await navigator.serviceWorker.ready
  active?.postMessage(keepShell)
}
