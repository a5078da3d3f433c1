import { RefusedError } from '@/lib/core/errors'
import { alikeSchema } from '@/lib/schemas/alike'
import { seeAlike } from '@/lib/use-cases/customers/see-alike'
import { errorResponse } from '@/lib/web/error-to-response'
import { readJson } from '@/lib/web/read-body'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

/** Whom and what a booking may mean that is on record. Sent as a body: names and numbers stay out of addresses and logs. */
export async function POST(request: Request) {
  try {
    const actor = await requireActor()
    const input = alikeSchema.safeParse(await readJson(request, 20_000))
    if (!input.success) throw new RefusedError({ code: 'invalid', message: 'This cannot be looked for.' })
    return Response.json(await seeAlike(actor, input.data), { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}
