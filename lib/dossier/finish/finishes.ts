import type { Finish } from '@/lib/core/finish/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from '@/lib/data/db'
import { finishRows, type OpenRow, type TookRow } from '@/lib/data/finish-history'
import { finishOf, type HeadToFinish } from './finish-of'
import { shopRecord, type ShopRecord } from './shop-record'

export type Finishes = {
  /** By head; a head that is ready or has left has none. */
  readonly of: ReadonlyMap<string, Finish>
  /** What each head is at and waits for, read on the way. */
  readonly rows: ReadonlyMap<string, readonly OpenRow[]>
  readonly took: readonly TookRow[]
  readonly record: ShopRecord
}

type Shop = { readonly now: Date; readonly timeZone: string; readonly settings: ShopSettings }

/** When each of these heads will be ready. One statement, however many heads. */
export async function finishesOf(reader: Reader, heads: readonly HeadToFinish[], shop: Shop): Promise<Finishes> {
  const { settings, now, timeZone } = shop
  const visitIds = heads.map(({ id }) => id)
  const { open, queued, took } = await finishRows(reader, { visitIds, rules: settings.rules, now })
  const rows = new Map<string, OpenRow[]>()
  for (const row of open) {
    const own = rows.get(row.visitId)
    if (own) own.push(row)
    else rows.set(row.visitId, [row])
  }
  const record = shopRecord(took, settings, timeZone)
  const known = { ...shop, queued, record }
  const of = new Map(
    heads.flatMap((head): [string, Finish][] => {
      const finish = finishOf(head, rows.get(head.id) ?? [], known)
      return finish ? [[head.id, finish]] : []
    }),
  )
  return { of, rows, took, record }
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
