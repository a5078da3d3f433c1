import type { Finish } from '@/lib/core/finish/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from '@/lib/data/db'
import { openRows, tookRows, type OpenRow } from '@/lib/data/finish-history'
import { finishOf, type HeadToFinish } from './finish-of'
import { shopRecord } from './shop-record'

export type Finishes = {
  /** By head; a head that is ready or has left has none. */
  readonly of: ReadonlyMap<string, Finish>
  /** What each head is at and waits for, read on the way. */
  readonly rows: ReadonlyMap<string, readonly OpenRow[]>
}

type Shop = { readonly now: Date; readonly timeZone: string; readonly settings: ShopSettings }

/** When each of these heads will be ready. Two statements, however many heads. */
export async function finishesOf(reader: Reader, heads: readonly HeadToFinish[], shop: Shop): Promise<Finishes> {
  const { rows: found, queued } = await openRows(
    reader,
    heads.map(({ id }) => id),
  )
  const rows = new Map<string, OpenRow[]>()
  for (const row of found) {
    const own = rows.get(row.visitId)
    if (own) own.push(row)
    else rows.set(row.visitId, [row])
  }
  const steps = found.flatMap(({ kind, key }) => (kind === 'step' ? [key] : []))
  const took = await tookRows(reader, steps, shop.now)
  const known = { ...shop, queued, record: shopRecord(took, shop.settings, shop.timeZone) }
  const of = new Map(
    heads.flatMap((head): [string, Finish][] => {
      const finish = finishOf(head, rows.get(head.id) ?? [], known)
      return finish ? [[head.id, finish]] : []
    }),
  )
  return { of, rows }
}

/** A job is ready when its last head is. Null: all of them are ready. */
export function latestOf(finishes: readonly (Finish | undefined)[]): Finish | null {
  const open = finishes.filter((one) => one !== undefined)
  const last = open.toSorted((a, b) => (a.nineOfTenOn < b.nineOfTenOn ? 1 : -1)).at(0)
  if (!last) return null
  const middleOn = open.reduce((day, one) => (one.middleOn > day ? one.middleOn : day), last.middleOn)
  return { ...last, middleOn }
}

/** The chance of a broken promise is more than one in ten: from the first day on. */
export const isAtRisk = (finish: Finish | null, promiseOn: string | null): boolean =>
  finish !== null && promiseOn !== null && finish.nineOfTenOn > promiseOn
