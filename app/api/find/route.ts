import { RefusedError } from '@/lib/core/errors'
import { findSchema } from '@/lib/schemas/job'
import { findCustomers } from '@/lib/use-cases/customers/find-customers'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { findHeads } from '@/lib/use-cases/find/find-heads'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

const searches = { anything: findAnything, customers: findCustomers, heads: findHeads }

/** What is found while somebody types: anything, or only customers or heads (at booking). */
export async function GET(request: Request) {
  try {
    const actor = await requireActor()
    const asked = new URL(request.url).searchParams
    const input = findSchema.safeParse({ q: asked.get('q') ?? '' })
    if (!input.success) throw new RefusedError({ code: 'invalid', message: 'Too long to look for.' })
    const search = searches[whatOf(asked.get('what'))]
    return Response.json(await search(actor, input.data), { headers: { 'Cache-Control': 'no-store' } })
  } catch (error) {
    return errorResponse(error)
  }
}

const whatOf = (text: string | null): keyof typeof searches =>
  text === 'customers' || text === 'heads' ? text : 'anything'
