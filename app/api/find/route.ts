import { RefusedError } from '@/lib/core/errors'
import { findSchema } from '@/lib/schemas/job'
import { findCastings } from '@/lib/use-cases/castings/find-castings'
import { findCustomers } from '@/lib/use-cases/customers/find-customers'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { findHeads } from '@/lib/use-cases/find/find-heads'
import { findPrices } from '@/lib/use-cases/prices/find-prices'
import { findVendors } from '@/lib/use-cases/vendors/find-vendors'
import { errorResponse } from '@/lib/web/error-to-response'
import { requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

const searches = {
  anything: findAnything,
  castings: findCastings,
  customers: findCustomers,
  heads: findHeads,
  prices: findPrices,
  vendors: findVendors,
}

/** What is found while somebody types: anything, or only what the field picks from. */
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
  text !== null && Object.hasOwn(searches, text) ? (text as keyof typeof searches) : 'anything'
