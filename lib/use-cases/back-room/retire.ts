import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { Action } from '@/lib/core/access/table'
import { must } from '@/lib/core/errors'
import { castingById } from '@/lib/data/castings'
import type { Tx } from '@/lib/data/db'
import { refuseWhenFull } from '@/lib/data/in-use'
import { priceItemById } from '@/lib/data/price-list'
import { taxRateById } from '@/lib/data/tax-rates'
import { vendorById } from '@/lib/data/vendors'
import { conflictUnless, write, type Moment } from '@/lib/data/write'

type Change = {
  readonly where: { readonly id: string; readonly version: number }
  readonly data: { readonly retiredAt: Date | null; readonly version: { readonly increment: 1 } }
}

type Retiring<Key extends string> = {
  readonly may: Action
  /** Under which its id comes and is given back. */
  readonly key: Key
  readonly subject: 'casting' | 'vendor' | 'price-item' | 'tax-rate'
  readonly nameOf: (tx: Tx, id: string) => Promise<string>
  readonly change: (tx: Tx, change: Change) => Promise<{ count: number }>
  /** Of which only so many may be in use. */
  readonly full?: Parameters<typeof refuseWhenFull>[1]
}

type Input<Key extends string> = { readonly [K in Key]: string } & {
  readonly version: number
  readonly retired: boolean
}

/** Takes something off the lists, or puts a retired one back. Nothing is deleted: what points at it keeps it. */
const retiring =
  <Key extends string>({ may, key, subject, nameOf, change, full }: Retiring<Key>) =>
  async (actor: Actor, input: Input<Key>, moment: Moment): Promise<{ readonly [K in Key]: string }> => {
    must(allow(actor, may))
    return write(actor, moment, async (ctx) => {
      const { version, retired } = input
      const id: string = input[key]
      const name = await nameOf(ctx.tx, id)
      if (full !== undefined && !retired) await refuseWhenFull(ctx.tx, full)
      const data = { retiredAt: retired ? ctx.now : null, version: { increment: 1 } } as const
      conflictUnless(await change(ctx.tx, { where: { id, version }, data }), name)
      ctx.audit({ action: retired ? `${subject}.retire` : `${subject}.restore`, subjectId: id })
      return Object.fromEntries([[key, id]]) as { readonly [K in Key]: string }
    })
  }

/** Heads of a retired casting keep it. */
export const retireCasting = retiring({
  may: 'casting.change',
  key: 'castingId',
  subject: 'casting',
  nameOf: async (tx, id) => (await castingById(tx, id)).name,
  change: (tx, change) => tx.castingRecord.updateMany(change),
})

/** What is out with a retired vendor stays out and comes back as usual. */
export const retireVendor = retiring({
  may: 'vendor.change',
  key: 'vendorId',
  subject: 'vendor',
  nameOf: async (tx, id) => (await vendorById(tx, id)).name,
  change: (tx, change) => tx.vendor.updateMany(change),
})

/** Lines that stand on jobs stay. */
export const retirePriceItem = retiring({
  may: 'settings.change',
  key: 'itemId',
  subject: 'price-item',
  nameOf: async (tx, id) => (await priceItemById(tx, id)).text,
  change: (tx, change) => tx.priceItem.updateMany(change),
})

/** Lines and invoices with a retired tax keep it; the price list's items with it are taxed by their last rate. */
export const retireTaxRate = retiring({
  may: 'settings.change',
  key: 'rateId',
  subject: 'tax-rate',
  nameOf: async (tx, id) => (await taxRateById(tx, id)).name,
  full: 'taxes',
  change: (tx, change) => tx.taxRate.updateMany(change),
})
