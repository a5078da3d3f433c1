import { orderSupplySchema, receiveSupplySchema, type OrderSupplyForm } from '@/lib/schemas/supply'
import type { Moment } from '@/lib/data/write'
import { orderSupply } from '@/lib/use-cases/supply/order-supply'
import { receiveSupply } from '@/lib/use-cases/supply/receive-supply'
import type { TestDatabase } from '@/tests/setup/database'
import { at, book, casting, counter, head, machinist, monday, openShop, otherCasting } from '../jobs/counter-shop'

export const vendor = '0190a0a0-0000-7000-8000-00000000000a'
export const otherVendor = '0190a0a0-0000-7000-8000-00000000000b'
/** 58.0 cc nominal, cut by its maker, of the casting that is booked. */
export const cut58 = '0190a0a0-0000-7000-8000-00000000000c'
/** Of another casting. */
export const strange = '0190a0a0-0000-7000-8000-00000000000d'

/** A shop with two suppliers, and how its castings can be bought. */
export async function supplyShop(database: TestDatabase): Promise<void> {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  await openShop(database)
  await database.client.vendor.createMany({
    data: [
      { id: vendor, name: 'Causey Foundry' },
      { id: otherVendor, name: 'Lathom Parts' },
    ].map((row) => ({ ...row, phone: '', email: '', address: '', services: '', createdAt: monday })),
  })
  await database.client.castingVariant.createMany({
    data: [
      {
        id: cut58,
        castingId: casting,
        name: '58 cc',
        nominalCc: 58,
        nominalText: '58.0',
        supply: 'special',
        cutByMaker: true,
        leadDays: 10,
        costMinor: 70000,
      },
      {
        id: strange,
        castingId: otherCasting,
        name: 'bare',
        nominalCc: 40,
        nominalText: '40',
        supply: 'stock',
        cutByMaker: false,
        leadDays: null,
        costMinor: null,
      },
    ],
  })
}

/** A pair that the shop buys, already cut by its maker. */
export const bookBought = () =>
  book({
    preset: 'bought-in',
    ordered: (['thickness', 'finished'] as const).map((work) => ({ work, note: '' })),
    heads: ['left', 'right'].map((side) => head({ side, source: 'bought-cut', used: false })),
  })

type Booked = Awaited<ReturnType<typeof bookBought>>

export const orderForm = (job: Booked, over: Partial<OrderSupplyForm> = {}): OrderSupplyForm => ({
  vendorId: vendor,
  jobId: job.jobId,
  promisedOn: '2026-03-12',
  note: '',
  heads: [{ variantId: cut58, what: '', visitIds: job.heads.map((entry) => entry.visitId), cost: '700.00' }],
  parts: [],
  ...over,
})

export const order = (form: OrderSupplyForm, moment: Moment = at(monday), actor = counter) =>
  orderSupply(actor, orderSupplySchema.parse(form), moment)

type Came = { readonly visitId: string; readonly tag?: string }
export const receive = (
  orderId: string,
  version: number,
  heads: readonly Came[],
  parts: readonly { readonly lineId: string; readonly quantity: string }[] = [],
  moment: Moment = at(monday),
  actor = machinist,
) =>
  receiveSupply(
    actor,
    receiveSupplySchema.parse({
      orderId,
      version,
      parts,
      heads: heads.map(({ visitId, tag = '' }) => ({ visitId, tag })),
    }),
    moment,
  )
