import { RefusedError } from '@/lib/core/errors'
import { booksSchema } from '@/lib/schemas/books'
import { exportBooks } from '@/lib/use-cases/money/export-books'
import { refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

type Context = { params: Promise<{ kind: string }> }

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

/** A file for the bookkeeper; what goes wrong is said in words. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  try {
    const actor = await requireActor()
    const { searchParams } = new URL(request.url)
    const asked = { kind: (await params).kind, from: searchParams.get('from'), to: searchParams.get('to') }
    const input = booksSchema.safeParse(asked)
    if (!input.success) {
      throw new RefusedError({ code: 'invalid', message: input.error.issues[0]?.message ?? 'Choose two days.' })
    }
    const { name, text } = await exportBooks(actor, input.data)
    return new Response(text, {
      headers: {
        ...guarded,
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': `attachment; filename="${name}"`,
      },
    })
  } catch (error) {
    const refusal = refusalOf(error)
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8' }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}
