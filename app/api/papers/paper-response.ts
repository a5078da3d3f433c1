import { createHash } from 'node:crypto'
import type { Actor } from '@/lib/core/access/roles'
import type { Paper, StoredPaper } from '@/lib/use-cases/papers/print-papers'
import { headersOf, refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'
import { refuseTooMany } from '@/lib/web/throttle'

const guarded = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
}

/** The browser may keep a paper, and asks each time whether it still may show it: who may no longer see it gets none. */
const revalidated = 'private, no-cache'

/**
 * A paper is opened in a browser tab: what goes wrong is said there in words. `print` lets the asker in and reads what the
 * paper says before anything is compared, so that "not modified" too is only said to somebody who may know.
 */
export async function answer(
  request: Request,
  print: () => Promise<Paper | StoredPaper>,
  noIndex = false,
): Promise<Response> {
  const headers = noIndex ? { ...guarded, 'X-Robots-Tag': 'noindex, nofollow' } : guarded
  try {
    const paper = withEtag(await print())
    const kept = { ...headers, 'Cache-Control': revalidated, ETag: paper.etag }
    if (matchesEtag(request, paper.etag)) return new Response(null, { status: 304, headers: kept })
    return new Response(new Uint8Array(await paper.bytes()), {
      headers: {
        ...kept,
        'Content-Type': 'application/pdf',
        'Content-Disposition': `inline; filename="${safe(paper.name)}"`,
      },
    })
  } catch (error) {
    const refusal = refusalOf(error)
    return new Response(refusal.message, {
      status: statusOf(refusal),
      headers: {
        ...headers,
        ...headersOf(refusal),
        'Cache-Control': 'no-store',
        'Content-Type': 'text/plain; charset=utf-8',
      },
    })
  }
}

function withEtag(paper: Paper | StoredPaper): Paper {
  if ('etag' in paper) return paper
  const { name, bytes } = paper
  const etag = `"${createHash('sha256').update(bytes).digest('base64url')}"`
  return { name, etag, bytes: async () => bytes }
}

/** Weak tags of a proxy that packed the answer mean the same paper. */
function matchesEtag(request: Request, etag: string): boolean {
  const known = request.headers.get('if-none-match') ?? ''
  return known.split(',').some((tag) => tag.trim().replace(/^W\//, '') === etag)
}

/** For somebody signed in. */
export const paperFor = (request: Request, print: (actor: Actor) => Promise<Paper | StoredPaper>): Promise<Response> =>
  answer(request, async () => {
    const actor = await requireActor()
    await refuseTooMany('paper', actor.personId)
    return print(actor)
  })

/** A tag may be the shop's own number: nothing but what any file system takes goes into the name. */
const safe = (name: string): string => name.replace(/[^\w.-]+/g, '-')
