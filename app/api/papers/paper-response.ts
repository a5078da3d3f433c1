import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import type { Paper } from '@/lib/use-cases/papers/print-papers'
import { refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'
import { useAllowed as isAllowed } from '@/lib/web/throttle'

const guarded = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
}

/** A paper is opened in a browser tab: what goes wrong is said there in words. */
export async function answer(print: () => Promise<Paper>, noIndex = false): Promise<Response> {
  const headers = noIndex ? { ...guarded, 'X-Robots-Tag': 'noindex, nofollow' } : guarded
  try {
    const { bytes, name } = await print()
    return new Response(new Uint8Array(bytes), {
      headers: {
        ...headers,
        'Content-Type': 'application/pdf',
        'Content-Disposition': `inline; filename="${safe(name)}"`,
      },
    })
  } catch (error) {
    const refusal = refusalOf(error)
    return new Response(refusal.message, {
      status: statusOf(refusal),
      headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' },
    })
  }
}

/** For somebody signed in. */
export const paperFor = (print: (actor: Actor) => Promise<Paper>): Promise<Response> =>
  answer(async () => {
    const actor = await requireActor()
    if (!(await isAllowed('paper'))) {
      throw new RefusedError({
        code: 'too-many',
        message: 'Too many papers at once. Wait a minute, then try again.',
      })
    }
    return print(actor)
  })

/** A tag may be the shop's own number: nothing but what any file system takes goes into the name. */
const safe = (name: string): string => name.replace(/[^\w.-]+/g, '-')
