import { subscribe } from 'node:diagnostics_channel'
import type { IncomingMessage } from 'node:http'

/** Where a request's own connection comes from. Whatever was sent under this name is taken away. */
export const peerHeader = 'x-brasstag-peer'

/**
 * The framework keeps an `x-forwarded-for` that was sent, and hands on no connection. Node says of each request when it
 * begins, before the framework sees it: there the address of its connection is written into a header of ours.
 */
export function notePeerAddresses(): void {
  subscribe('http.server.request.start', (message) => {
    const { request } = message as { readonly request: IncomingMessage }
    request.headers[peerHeader] = request.socket.remoteAddress ?? ''
    // The framework fails on it before anything of ours is asked: as a method that is refused in words it does not.
    if (request.method === 'TRACE') request.method = 'DELETE'
  })
}
