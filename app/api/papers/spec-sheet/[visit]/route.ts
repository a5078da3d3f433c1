import { z } from 'zod'
import { RefusedError } from '@/lib/core/errors'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { paperFor } from '../../paper-response'

type Context = { params: Promise<{ visit: string }> }

const asked = z
  .string()
  .regex(/^[1-9]\d{0,5}$/)
  .transform(Number)
  .optional()

/** The frozen bytes: the newest, or `?revision=`. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { visit } = await params
  const revision = asked.safeParse(new URL(request.url).searchParams.get('revision') ?? undefined)
  return paperFor(request, (actor) => {
    if (!revision.success) {
      throw new RefusedError({ code: 'not-found', message: 'There is no such revision of this sheet.' })
    }
    return printSpecSheet(actor, visit, revision.data)
  })
}
