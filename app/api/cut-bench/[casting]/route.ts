import { seeBenchCasting } from '@/lib/use-cases/cut-bench/see-bench-casting'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

type Context = { params: Promise<{ casting: string }> }

/** One casting's record, for a question that goes over to another casting while it is typed. */
export async function GET(_request: Request, { params }: Context) {
  try {
    const actor = await requireActor()
    const { casting } = await params
    return Response.json(await seeBenchCasting(actor, casting), { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
