import { shellCache } from '@/app/_service-worker/names'
import { openStore } from './store'

/** On sign-out: what this device read of the shop goes. What was done and not sent stays for its person. */
export async function forgetWhatWasRead(): Promise<void> {
  if ('caches' in window) await caches.delete(shellCache).catch(() => false)
  const store = await openStore().catch(() => null)
  await store?.forgetStations().catch(() => {})
  store?.close()
}
