import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { booksSchema } from '@/lib/schemas/books'
import { exportBooks } from '@/lib/use-cases/money/export-books'
import { fileAnswer, tableFile } from '@/lib/web/file-answer'
import { refuseUnlessAsked, requireActor } from '@/lib/web/require-actor'

type Context = { params: Promise<{ kind: string }> }

/** A file for the bookkeeper. */
export const GET = (request: Request, { params }: Context): Promise<Response> =>
  fileAnswer(request, async () => {
    const actor = await requireActor()
    const { searchParams } = new URL(request.url)
    const asked = { kind: (await params).kind, from: searchParams.get('from'), to: searchParams.get('to') }
    const input = booksSchema.safeParse(asked)
    if (!input.success) {
      throw new RefusedError({ code: 'invalid', message: input.error.issues[0]?.message ?? 'Choose two days.' })
    }
    must(allow(actor, 'bookkeeping.see'))
    await refuseUnlessAsked('exportBooks')
    return tableFile(await exportBooks(actor, input.data, { now: new Date() }))
  })
