import { RefusedError } from '@/lib/core/errors'
import { operationsSchema } from '@/lib/schemas/operation'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { errorResponse } from '@/lib/web/error-to-response'
import { carryOut } from '@/lib/web/operations'
import { readJson } from '@/lib/web/read-body'
import { requireActor } from '@/lib/web/require-actor'
import { refuseForeignOrigin } from '@/lib/web/same-origin'

export const dynamic = 'force-dynamic'

const mostBytes = 2_000_000

/** What was done at a station while the network or the server was away, or just now: one answer for each deed. */
export async function POST(request: Request) {
  try {
    refuseForeignOrigin(request)
    const actor = await requireActor()
    const sent = operationsSchema.safeParse(await readJson(request, mostBytes))
    if (!sent.success) {
      throw new RefusedError({ code: 'invalid', message: 'This could not be read. Reload the page and try again.' })
    }
    const answers = await carryOut(actor, sent.data, new Date())
    return Response.json({ answers, newest: await newestChange() }, { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
