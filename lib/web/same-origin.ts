import { RefusedError } from '@/lib/core/errors'

type Asked = Pick<Request, 'headers'>

/**
 * Whether a change comes from elsewhere than a page of this app: the browser names the page's origin by itself, and no
 * other page can say it is ours. Compared with the host as the framework compares it for its actions.
 */
export function isForeign({ headers }: Asked): boolean {
  const host = headers.get('x-forwarded-host')?.split(',')[0]?.trim() ?? headers.get('host')
  return host === null || hostOf(headers.get('origin')) !== host
}

/** A change that does not come from a page of this app is refused. */
export function refuseForeignOrigin(asked: Asked): void {
  if (!isForeign(asked)) return
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
