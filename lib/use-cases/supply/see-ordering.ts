import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { formatAmount } from '@/lib/core/money/amount'
import { addDays, dayIn } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'
import { jobByNumber } from '@/lib/data/jobs'
import { shopOf } from '@/lib/data/shop'
import { headsNobodyOrdered, openWaits } from '@/lib/data/away-list'
import { variantsOf } from '@/lib/data/supply'
import { vendorPicks, type VendorPick } from '@/lib/data/vendors'

export type VariantChoice = {
  readonly id: string
  readonly name: string
  readonly nominalText: string
  readonly cutByMaker: boolean
  /** The day it can be here by its lead time; null: not known. */
  readonly hereBy: string | null
  /** As it is typed; '' when it is not on record. */
  readonly cost: string
}

/** Heads of one casting and one source that are on order and that nobody has ordered yet. */
export type HeadsToOrder = {
  readonly castingId: string
  readonly casting: string
  readonly cut: boolean
  readonly heads: readonly { readonly visitId: string; readonly name: string }[]
  readonly variants: readonly VariantChoice[]
}

export type PartsToOrder = { readonly waitId: string; readonly what: string; readonly head: string }

export type Ordering = {
  readonly job: { readonly id: string; readonly number: string } | null
  readonly vendors: Paged<VendorPick>
  readonly heads: readonly HeadsToOrder[]
  readonly parts: readonly PartsToOrder[]
  readonly currency: string
  /** Whether another page of heads or parts follows. */
  readonly more: boolean
}

/** What a supply order can be filled with: of one job, or of all. */
export async function seeOrdering(
  actor: Actor,
  input: { readonly job: string | null; readonly now: Date; readonly page?: number },
): Promise<Ordering> {
  must(allow(actor, 'supply.order'))
  const client = await db()
  const shop = await shopOf(client)
  const job = input.job === null ? null : await jobByNumber(client, input.job)
  const [page, jobId] = [input.page ?? 1, job?.id ?? null]
  const { rows: visits, more: moreHeads } = await headsNobodyOrdered(client, page, jobId)
  const { rows: waits, more: moreWaits } = await openWaits(client, page, { jobId, toOrder: true })
  const rows = await variantsOf(
    client,
    visits.flatMap((visit) => visit.castingId ?? []),
  )
  const vendors = await vendorPicks(client)
  const today = dayIn(shop.timeZone, input.now)
  const groups = new Map<string, HeadsToOrder>()
  for (const { id, source, castingId: known, casting, head, job: of, position } of visits) {
    const castingId = known ?? ''
    const cut = source === 'bought-cut'
    const key = `${of.number} ${castingId} ${source}`
    const before = groups.get(key)
    groups.set(key, {
      castingId,
      casting: casting ?? 'casting not on record',
      cut,
      heads: [...(before?.heads ?? []), { visitId: id, name: headName(head.tags, of.number, position) }],
      variants: rows
        .filter((row) => row.castingId === castingId)
        .sort((a, b) => Number(b.cutByMaker === cut) - Number(a.cutByMaker === cut))
        .map((row) => variantChoice(row, today, shop.currencyExponent)),
    })
  }
  return {
    job,
    vendors,
    heads: [...groups.values()],
    parts: waits.map(({ id, what, visit }) => ({
      waitId: id,
      what,
      head: headName(visit.head.tags, visit.job.number, visit.position),
    })),
    currency: shop.currency,
    more: moreHeads || moreWaits,
  }
}

type Row = Awaited<ReturnType<typeof variantsOf>>[number]

const variantChoice = (row: Row, today: string, exponent: number): VariantChoice => ({
  id: row.id,
  name: row.name,
  nominalText: row.nominalText,
  cutByMaker: row.cutByMaker,
  hereBy: row.leadDays === null ? null : addDays(today, row.leadDays),
  cost: row.costMinor === null ? '' : formatAmount(row.costMinor, exponent),
})
