import { RefusedError } from '@/lib/core/errors'

/**
 * A change comes from a page of this app, or it is refused: the browser names the page's origin by itself, and no other
 * page can say it is ours. Compared with the host as the framework compares it for its actions.
 */
export function refuseForeignOrigin({ headers }: Pick<Request, 'headers'>): void {
  const host = headers.get('x-forwarded-host')?.split(',')[0]?.trim() ?? headers.get('host')
  if (host !== null && hostOf(headers.get('origin')) === host) return
  throw new RefusedError({
    code: 'not-allowed',
    message: 'This was not sent from a page of Brasstag. Open the page again and send it from there.',
  })
}

function hostOf(origin: string | null): string | null {
  try {
    return origin === null ? null : new URL(origin).host
  } catch {
    return null
  }
}
