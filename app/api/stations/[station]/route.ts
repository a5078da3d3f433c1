import { z } from 'zod'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'
import { stationOf } from '@/lib/web/station-of'
import { stationView } from '@/lib/web/station-view'

export const dynamic = 'force-dynamic'

const since = z.coerce.number().int().min(0)

type Context = { params: Promise<{ station: string }> }

/**
 * What a tablet keeps of its station: the queue and the screens of what can be worked on. `?since=` names the newest
 * change it knows, and leaves out the screens that no change since then touches.
 */
export async function GET(request: Request, { params }: Context) {
  try {
    const actor = await requireActor()
    const station = stationOf((await params).station)
    const known = since.safeParse(new URL(request.url).searchParams.get('since') ?? undefined)
    const view = await stationView(actor, station, known.success ? known.data : null, new Date())
    return Response.json(view, { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
