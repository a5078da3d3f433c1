import { headersOf, refusalOf, statusOf } from './error-to-response'

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

export type KeptFile = {
  readonly name: string
  readonly type: 'text/csv; charset=utf-8' | 'application/gzip'
  readonly body: string | ReadableStream<Uint8Array>
}

/**
 * Records of the shop as a file to keep; what goes wrong is said in words. Whoever takes them along is asked for the
 * password: a link has no place for one beside it, so a page comes before it.
 */
export async function fileAnswer(request: Request, make: () => Promise<KeptFile>): Promise<Response> {
  try {
    const { name, type, body } = await make()
    const headers = { 'Content-Type': type, 'Content-Disposition': `attachment; filename="${name}"` }
    return new Response(body, { headers: { ...guarded, ...headers } })
  } catch (error) {
    const refusal = refusalOf(error)
    if (refusal.code === 'ask-again') return confirmFirst(request)
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8', ...headersOf(refusal) }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}

/** To the page that asks for the password, and from there back to this very address. */
function confirmFirst(request: Request): Response {
  const { pathname, search } = new URL(request.url)
  const to = `/confirm?${new URLSearchParams({ next: pathname + search })}`
  return new Response(null, { status: 303, headers: { ...guarded, Location: to } })
}

/** A table as such a file. */
export const tableFile = ({ name, text }: { readonly name: string; readonly text: string }): KeptFile => ({
  ...{ name, body: text },
  type: 'text/csv; charset=utf-8',
})
