import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { BenchShop } from '@/lib/core/options/bench-types'
import type { BenchCasting } from '@/lib/core/options/question-of'
import { lastEstimates } from '@/lib/data/bench'
import { benchShop } from '@/lib/data/bench-shop'
import { castingPicks, type CastingPick } from '@/lib/data/castings-read'
import { customerForBooking } from '@/lib/data/customers'
import { db, type Reader } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { estimateAnswer } from '@/lib/data/stored/estimate'
import { castingOnBench } from './see-bench-casting'

export type BenchView = {
  readonly castings: Paged<CastingPick>
  /** The one the question begins with; null: none. */
  readonly casting: BenchCasting | null
  readonly shop: BenchShop
  readonly kept: readonly {
    readonly id: string
    readonly number: string
    readonly forWhom: string
    readonly title: string
  }[]
  /** Whom it was opened for, from their page; null: nobody in particular. */
  readonly forWhom: { readonly id: string; readonly name: string } | null
  readonly mayBook: boolean
  readonly money: { readonly currency: string; readonly locale: string } | null
}

/** What the cut bench works with: one casting's record, and the shop's limits, prices and waits. */
export async function seeBench(actor: Actor, castingId: string, customerId = ''): Promise<BenchView> {
  must(allow(actor, 'cut-bench.see'))
  const client = await db()
  const first = await castingPicks(client)
  const chosen = castingId === '' ? first.rows[0]?.id : castingId
  const { locale, currency, timeZone } = await shopOf(client)
  const { values: settings } = await currentSettings(client)
  const estimates = await lastEstimates(client)
  return {
    castings: await withChosen(client, first, chosen),
    casting: chosen === undefined ? null : await castingOnBench(client, chosen, settings, sees(actor, 'supply cost')),
    shop: await benchShop(client, { settings, timeZone }, sees(actor, 'price')),
    kept: estimates.map(({ id, number, forWhom, answer }) => ({
      id,
      number,
      forWhom,
      title: estimateAnswer.read(answer, id).title,
    })),
    forWhom: customerId === '' || !can(actor, 'customer.see') ? null : await customerForBooking(client, customerId),
    mayBook: can(actor, 'job.book'),
    money: sees(actor, 'price') ? { locale, currency } : null,
  }
}

/** An address may name a casting that is not among the first by name. */
async function withChosen(client: Reader, first: Paged<CastingPick>, chosen = ''): Promise<Paged<CastingPick>> {
  if (chosen === '' || first.rows.some(({ id }) => id === chosen)) return first
  const { rows } = await castingPicks(client, { ids: [chosen] })
  return { ...first, rows: [...rows, ...first.rows] }
}
