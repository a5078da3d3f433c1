import { askedStep } from '@/lib/schemas/asked-step'
import { RefusedError } from '@/lib/core/errors'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'
import { stationOf } from '@/lib/web/station-of'
import { stepView } from '@/lib/web/station-view'

export const dynamic = 'force-dynamic'

type Context = { params: Promise<{ station: string }> }

/** One step of one head, as it is now. */
export async function GET(request: Request, { params }: Context) {
  try {
    const actor = await requireActor()
    const station = stationOf((await params).station)
    const asked = askedStep.safeParse(Object.fromEntries(new URL(request.url).searchParams))
    if (!asked.success) throw new RefusedError({ code: 'not-found', message: 'This step does not exist.' })
    const { visit: visitId, step: stepId, run: occurrence, order: orderId } = asked.data
    const view = await stepView(actor, station, { visitId, key: { stepId, occurrence, orderId } }, new Date())
    return Response.json(view, { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
