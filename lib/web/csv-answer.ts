import { headersOf, refusalOf, statusOf } from './error-to-response'

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

/**
 * A table as a file to keep; what goes wrong is said in words. It takes records of the shop along, so it asks for the
 * password: a link has no place for one beside it, so a page comes before it.
 */
export async function csvAnswer(
  request: Request,
  make: () => Promise<{ readonly name: string; readonly text: string }>,
): Promise<Response> {
  try {
    const { name, text } = await make()
    return new Response(text, {
      headers: {
        ...guarded,
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': `attachment; filename="${name}"`,
      },
    })
  } catch (error) {
    const refusal = refusalOf(error)
    if (refusal.code === 'ask-again') return confirmFirst(request)
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8', ...headersOf(refusal) }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}

/** To the page that asks for the password, and from there back to this very address. */
export function confirmFirst(request: Request): Response {
  const { pathname, search } = new URL(request.url)
  const to = `/confirm?${new URLSearchParams({ next: pathname + search })}`
  return new Response(null, { status: 303, headers: { ...guarded, Location: to } })
}
