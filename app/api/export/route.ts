import { takeEverything } from '@/lib/use-cases/export/take-everything'
import { headersOf, refusalOf, statusOf } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

const guarded = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cache-Control': 'no-store' }

/** Everything of the shop as one archive, streamed. */
export async function GET(): Promise<Response> {
  try {
    const { name, archive } = await takeEverything(await requireActor(), { now: new Date() })
    const headers = { 'Content-Type': 'application/gzip', 'Content-Disposition': `attachment; filename="${name}"` }
    return new Response(archive, { headers: { ...guarded, ...headers } })
  } catch (error) {
    const refusal = refusalOf(error)
    const headers = { ...guarded, 'Content-Type': 'text/plain; charset=utf-8', ...headersOf(refusal) }
    return new Response(refusal.message, { status: statusOf(refusal), headers })
  }
}
