import { NextResponse, type NextRequest } from 'next/server'
import { addressIn } from '@/lib/web/asked-from'
import { refusedAtDoor } from '@/lib/web/at-the-door'
import { isSecureAddress } from '@/lib/web/secure-address'
import { log } from '@/lib/web/log'
import { newRequestId, pathForLog, requestIdHeader } from '@/lib/web/request-id'
import { waitFor } from '@/lib/web/throttle'
import { tooManyPage } from '@/lib/web/plain-page'

/**
 * Sets the content security policy with a nonce and the headers of private pages. It authorises nothing: every page,
 * action and route asks for itself.
 */
export async function proxy(request: NextRequest) {
  const requestId = newRequestId()
  const refused = refusedAtDoor(request)
  if (refused) {
    const { pathname } = request.nextUrl
    const where = { address: addressIn(request.headers), path: pathForLog(pathname), method: request.method }
    log.warn({ event: 'refused at the door', status: refused.status, request: requestId, ...where }, 'refused')
    refused.headers.set(requestIdHeader, requestId)
    return refused
  }
  if (request.method === 'GET' && isLinkPage.test(request.nextUrl.pathname)) {
    // A page that has begun cannot say 429 any more.
    const retryAfterS = await waitFor('page', addressIn(request.headers))
    if (retryAfterS > 0) return tooManyPage(retryAfterS)
  }
  const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
  const policy = contentPolicy(nonce)
  const headers = new Headers(request.headers)
  headers.set('x-nonce', nonce)
  headers.set(requestIdHeader, requestId)
  headers.set('x-here', request.nextUrl.pathname + request.nextUrl.search)
  headers.set('Content-Security-Policy', policy)
  const response = NextResponse.next({ request: { headers } })
  const { pathname } = request.nextUrl
  response.headers.set(requestIdHeader, requestId)
  response.headers.set('X-Content-Type-Options', 'nosniff')
  response.headers.set('Referrer-Policy', 'no-referrer')
  // Only where people come by HTTPS: a shop on plain HTTP would lock itself out of its own address.
  if (isSecureAddress()) response.headers.set('Strict-Transport-Security', 'max-age=31536000; includeSubDomains')
  response.headers.set('Permissions-Policy', 'camera=(self), microphone=(), geolocation=()')
  response.headers.set('Cross-Origin-Opener-Policy', 'same-origin')
  response.headers.set('Cross-Origin-Resource-Policy', 'same-origin')
  if (!isPicture.test(pathname)) response.headers.set('Content-Security-Policy', policy)
  if (!isStaffPaper.test(pathname)) response.headers.set('Cache-Control', 'no-store')
  if (pathname.startsWith('/s/')) response.headers.set('X-Robots-Tag', 'noindex, nofollow')
  return response
}

const isLinkPage = /^\/(s|reset)\/[^/]+\/?$/

// What is set here takes the place of what a route says. A picture allows less than a page; a paper may be kept by the
// browser of somebody signed in, who is asked for again each time; a customer's never.
const isPicture = /^\/api\/(photos|logo)\/|^\/s\/[^/]+\/(photos\/|logo$)/
const isStaffPaper = /^\/api\/papers\//

/** Development needs eval for its refresh; a production page runs only what carries the nonce. */
function contentPolicy(nonce: string): string {
  const development = process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${development}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    // Without it a worker falls under the scripts, which need the nonce of a page.
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}

export const config = { matcher: ['/((?!_next/static|_next/image|icon|favicon.ico).*)'] }
