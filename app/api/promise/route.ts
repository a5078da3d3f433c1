import { RefusedError } from '@/lib/core/errors'
import { proposePromiseSchema } from '@/lib/schemas/promise'
import { proposePromise } from '@/lib/use-cases/jobs/propose-promise'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

/** The day that the booking on the page may be promised for, while it is typed. */
export async function GET(request: Request) {
  try {
    const actor = await requireActor()
    const input = proposePromiseSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams))
    if (!input.success) throw new RefusedError({ code: 'invalid', message: 'Choose the work first.' })
    const proposed = await proposePromise(actor, input.data, new Date())
    return Response.json(proposed, { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
