import { headersOf, refusalOf, statusOf } from './error-to-response'

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

/** A table as a file to keep; what goes wrong is said in words. */
export async function csvAnswer(
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
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8', ...headersOf(refusal) }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}
