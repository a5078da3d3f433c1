import { exportHasCome } from '@/lib/use-cases/export/take-everything'
import { headersOf, refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

const headers = { 'Cache-Control': 'no-store' }

/** How far the export is; null when none is under way. */
export async function GET(): Promise<Response> {
  try {
    return Response.json({ progress: exportHasCome(await requireActor()) }, { headers })
  } catch (error) {
    const refusal = refusalOf(error)
    const { message } = refusal
    return Response.json({ message }, { status: statusOf(refusal), headers: { ...headers, ...headersOf(refusal) } })
  }
}
