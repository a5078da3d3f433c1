import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { alikeTo, type AlikeCustomer } from '@/lib/data/alike'
import { db } from '@/lib/data/db'
import type { AlikeInput } from '@/lib/schemas/alike'

/** What a head on record is told by. */
export type AlikeHeadSeen = {
  readonly at: number
  readonly by: 'tag' | 'stamp'
  readonly headId: string
  readonly tag: string
  readonly stamp: string
  readonly marks: string
  readonly castingId: string | null
  readonly casting: string
  readonly lastJob: string
  readonly customer: string
}

export type AlikeSeen = { readonly customers: readonly AlikeCustomer[]; readonly heads: readonly AlikeHeadSeen[] }

/**
 * Customers and heads on record that a booking may mean, asked while it is typed. Booking itself refuses them as well
 * (`refuseAlike` in lib/data/alike.ts) until each is answered: the one that it is goes into `customer.id` or
 * `heads[n].headId`, the others into `notThese` (lib/schemas/alike.ts). `useAlike` and `IsIt` in app/_components/is-it ask.
 */
export async function seeAlike(actor: Actor, input: AlikeInput): Promise<AlikeSeen> {
  must(allow(actor, 'job.book'))
  const { customers, heads } = await alikeTo(await db(), input, { customers: [], heads: [] })
  return {
    customers,
    heads: heads.map(({ at, by, head: { id, stamp, marks, castingId, casting, tags, visit } }) => ({
      ...{ at, by, headId: id, stamp, marks, castingId, casting },
      tag: tags[0]?.number ?? '',
      lastJob: visit?.jobNumber ?? '',
      customer: visit?.customer ?? '',
    })),
  }
}
