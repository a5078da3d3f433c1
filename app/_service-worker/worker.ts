/// <reference lib="webworker" />
import { NetworkFirst, Serwist, type PrecacheEntry, type SerwistPlugin } from 'serwist'
import { keepShell, shellAddress, shellCache } from './names'

/**
 * On secure addresses: a reload and a cold start of the station app work without the network. The files of the build are
 * kept, and one page, the choice of a station; the app draws every station from what it kept itself.
 */
declare const self: ServiceWorkerGlobalScope & { readonly brasstagFiles: PrecacheEntry[] }

const isStation = (path: string): boolean => path === shellAddress || path.startsWith(`${shellAddress}/`)

/** Every address of the station app is answered with the one page; only that page itself is kept. */
const oneShell: SerwistPlugin = {
  cacheKeyWillBeUsed: async () => shellAddress,
  cacheWillUpdate: async ({ request, response }) =>
    new URL(request.url).pathname === shellAddress && isShell(response) ? response : null,
}

/** Not the sign-in page that somebody was sent to. */
const isShell = ({ status, redirected }: Response): boolean => status === 200 && !redirected

const noConnection = () =>
  new Response(
    `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>No connection</title>
<body style="font: 1.25rem sans-serif; margin: 2rem"><h1>No connection</h1>
<p>This page needs the shop’s server. The stations work without it.</p>
<p><a href="${shellAddress}">Stations</a></p>`,
    { status: 503, headers: { 'Content-Type': 'text/html; charset=utf-8' } },
  )

new Serwist({
  precacheEntries: self.brasstagFiles,
  precacheOptions: { cleanupOutdatedCaches: true },
  skipWaiting: true,
  clientsClaim: true,
  disableDevLogs: true,
  runtimeCaching: [
    {
      matcher: ({ request, url, sameOrigin }) => sameOrigin && request.mode === 'navigate' && isStation(url.pathname),
      handler: new NetworkFirst({
        cacheName: shellCache,
        networkTimeoutSeconds: 3,
        matchOptions: { ignoreVary: true },
        plugins: [oneShell, { handlerDidError: async () => noConnection() }],
      }),
    },
    {
      matcher: ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate',
      handler: ({ request }) => fetch(request).catch(noConnection),
    },
  ],
}).addEventListeners()

self.addEventListener('message', (event) => {
  if (event.data === keepShell) event.waitUntil(fetchShell())
})

async function fetchShell(): Promise<void> {
  const response = await fetch(shellAddress).catch(() => null)
  if (response && isShell(response)) await (await caches.open(shellCache)).put(shellAddress, response)
}
