import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import { RefusedError } from '@/lib/core/errors'
import type { Reader, Tx } from './db'
import { newId } from './ids'
import { addPromise, headOnOrder, type Promised } from './vendor-orders'
import { conflictUnless, type Write } from './write'

const headOfLine = { ...headOnOrder, place: { select: { whereabouts: true } } } as const satisfies Prisma.VisitSelect

const supplyInclude = {
  vendor: true,
  job: { select: { number: true } },
  promises: { orderBy: { at: 'asc' } },
  lines: {
    orderBy: { id: 'asc' },
    include: {
      variant: { select: { name: true, nominalText: true, casting: { select: { name: true } } } },
      wait: { include: { visit: { select: headOfLine } } },
      heads: { orderBy: { id: 'asc' }, include: { visit: { select: headOfLine } } },
    },
  },
} as const satisfies Prisma.SupplyOrderInclude

export type SupplyRecord = Prisma.SupplyOrderGetPayload<{ include: typeof supplyInclude }>

const open = { arrivedAt: null, endedAt: null } as const

type ListedVisit = {
  readonly id: string
  readonly headId: string
  readonly position: number
  readonly job: { readonly number: string; readonly promiseOn: string | null }
  readonly head: { readonly tags: readonly { readonly number: string }[] }
  readonly place: { readonly whereabouts: string } | null
}

/** What a list or page says of a supply order. */
export type SupplyToShow = Pick<
  SupplyRecord,
  'id' | 'number' | 'version' | 'note' | 'createdAt' | 'promisedOn' | 'arrivedAt' | 'endedAt' | 'endReason'
> & {
  readonly vendor: { readonly name: string; readonly phone: string }
  readonly job: { readonly number: string } | null
  readonly promises: readonly { readonly id: string; readonly promisedOn: string; readonly note: string }[]
  readonly lines: readonly {
    readonly id: string
    readonly kind: string
    readonly what: string
    readonly quantity: number
    readonly arrived: number
    readonly costMinor: number | null
    readonly waitId: string | null
    readonly variant: { readonly nominalText: string; readonly casting: { readonly name: string } } | null
    readonly wait: { readonly arrivedAt: Date | null; readonly visit: ListedVisit } | null
    readonly heads: readonly { readonly arrivedAt: Date | null; readonly visit: ListedVisit }[]
  }[]
}

export async function supplyById(reader: Reader, id: string): Promise<SupplyRecord> {
  const order = await reader.supplyOrder.findUnique({ where: { id }, include: supplyInclude })
  if (!order) throw new RefusedError({ code: 'not-found', message: 'There is no such supply order.' })
  return order
}

/** Whether every line of an order has come. */
export async function isAllHere(tx: Tx, orderId: string): Promise<boolean> {
  const lines = await tx.supplyLine.findMany({ where: { orderId }, select: { arrived: true, quantity: true } })
  return lines.every((line) => line.arrived >= line.quantity)
}

/** A line that still brings this: of an order that was not ended. */
const stillComing = { order: { endedAt: null } } as const

/** How these castings can be bought now. */
export const variantsOf = (reader: Reader, castingIds: readonly string[]) =>
  reader.castingVariant.findMany({
    where: { castingId: { in: [...new Set(castingIds)] }, retiredAt: null },
    orderBy: { name: 'asc' },
  })

/** One way to buy a casting, while it can still be bought so; null: it cannot. */
export const variantInUse = (reader: Reader, id: string) =>
  reader.castingVariant.findFirst({ where: { id, retiredAt: null } })

/** The number of the order that brings this head; null: none does. */
export const bringsHead = async (tx: Tx, visitId: string): Promise<string | null> =>
  (
    await tx.supplyHead.findFirst({
      where: { visitId, line: stillComing },
      select: { line: { select: { order: { select: { number: true } } } } },
    })
  )?.line.order.number ?? null

/** The number of the order that brings the parts of this wait; null: none does. */
export const bringsParts = async (tx: Tx, waitId: string): Promise<string | null> =>
  (
    await tx.supplyLine.findFirst({
      where: { waitId, ...stillComing },
      select: { order: { select: { number: true } } },
    })
  )?.order.number ?? null

export type NewSupplyLine = {
  readonly kind: 'head' | 'part'
  readonly what: string
  readonly variantId: string | null
  readonly waitId: string | null
  readonly quantity: number
  readonly costMinor: number | null
  readonly visitIds: readonly string[]
}

export async function addSupplyLine(ctx: Write, orderId: string, { visitIds, ...line }: NewSupplyLine): Promise<void> {
  const id = newId(ctx.now)
  await ctx.tx.supplyLine.create({ data: { id, orderId, ...line, arrived: 0 } })
  await ctx.tx.supplyHead.createMany({ data: visitIds.map((visitId) => ({ id: newId(ctx.now), lineId: id, visitId })) })
}

/** Keeps a promise of the supplier, and tells it to the parts waits that the order ends. */
export async function promiseSupply(ctx: Write, promised: Promised, vendor: { readonly name: string }): Promise<void> {
  await addPromise(ctx, 'supply', promised)
  await ctx.tx.partsWait.updateMany({
    where: { arrivedAt: null, lines: { some: { orderId: promised.orderId } } },
    data: { fromWhom: vendor.name, promisedOn: promised.promisedOn, version: { increment: 1 } },
  })
}

/** Takes the order's lock forward; refused when it was changed since `version` was read, or nothing of it is out. */
export async function bumpSupply(
  ctx: Write,
  order: { readonly id: string; readonly number: string },
  version: number,
  data: Prisma.SupplyOrderUpdateManyMutationInput = {},
): Promise<void> {
  const changed = await ctx.tx.supplyOrder.updateMany({
    where: { id: order.id, version, ...open },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, `supply order ${order.number}`)
}
