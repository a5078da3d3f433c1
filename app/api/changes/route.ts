import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

/** The number of the newest change: a page that shows an older one asks for itself again. */
export async function GET() {
  try {
    await requireActor()
    return Response.json({ newest: await newestChange() }, { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
