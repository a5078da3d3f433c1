import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import { turnaround, type Turnaround } from '@/lib/core/shop/turnaround'
import { db } from '@/lib/data/db'
import { openOrders, openWaits, stepsToSend, turnarounds, type OrderRecord } from '@/lib/data/outside'
import { shopOf } from '@/lib/data/shop'
import { headsToOrder, openSupply } from '@/lib/data/supply'
import { supplyView, type SupplyView } from '../supply/supply-view'

export type AwayHead = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly jobPromiseOn: string | null
  readonly back: boolean
}

export type AwayOrder = {
  readonly orderId: string
  readonly number: string
  readonly scope: readonly string[]
  readonly sentOn: string
  readonly daysOut: number
  readonly promisedOn: string | null
  /** Days over the vendor's promise; 0: not late. */
  readonly daysLate: number
  readonly heads: readonly AwayHead[]
  /** The earliest promise to a customer that waits for it. */
  readonly holdsUp: string | null
}

export type AwayVendor = {
  readonly vendorId: string
  readonly name: string
  readonly phone: string
  readonly orders: readonly AwayOrder[]
  /** Null: nothing has come back from this vendor yet. */
  readonly turnaround: Turnaround | null
}

export type ToSend = { readonly head: AwayHead; readonly step: string }
export type PartsLine = {
  readonly waitId: string
  readonly version: number
  readonly head: AwayHead
  readonly what: string
  readonly fromWhom: string
  readonly promisedOn: string | null
  readonly days: number
  readonly late: boolean
  /** The supply order that brings them; null: nobody has ordered them here. */
  readonly supply: { readonly orderId: string; readonly number: string } | null
}

export type Away = {
  readonly vendors: readonly AwayVendor[]
  readonly toSend: readonly ToSend[]
  readonly parts: readonly PartsLine[]
  /** Heads and parts that the shop buys, by supplier. */
  readonly suppliers: readonly {
    readonly name: string
    readonly phone: string
    readonly orders: readonly SupplyView[]
  }[]
  /** Heads on order that no supply order brings. */
  readonly toOrder: readonly AwayHead[]
  readonly mayOrder: boolean
}

type VisitOfOrder = Omit<OrderRecord['visits'][number]['visit'], 'head'> & {
  readonly head: { readonly tags: readonly { readonly number: string }[] }
}

const headLine = (visit: VisitOfOrder, back: boolean): AwayHead => ({
  visitId: visit.id,
  headId: visit.headId,
  tag: headName(visit.head.tags, visit.job.number, visit.position),
  jobNumber: visit.job.number,
  jobPromiseOn: visit.job.promiseOn,
  back,
})

/** What is out, with whom, for how long, and what it holds up; what could go out; what waits for parts. */
export async function seeAway(actor: Actor, now: Date): Promise<Away> {
  must(allow(actor, 'outside.see'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const today = dayIn(timeZone, now)
  const [orders, sendable, waits, supply, toOrder] = await Promise.all([
    openOrders(client),
    stepsToSend(client),
    openWaits(client),
    openSupply(client),
    headsToOrder(client, null),
  ])
  const bringing = new Map(
    supply.flatMap(({ id, number, lines }) =>
      lines.flatMap(({ waitId }) => (waitId === null ? [] : [[waitId, { orderId: id, number }] as const])),
    ),
  )
  const vendorIds = [...new Set(orders.map((order) => order.vendorId))]
  const done = await turnarounds(client, vendorIds)
  const daysTaken = (vendorId: string): number[] =>
    done.flatMap((line) =>
      line.order.vendorId === vendorId && line.order.sentAt && line.receivedAt
        ? [daysBetween(dayIn(timeZone, line.order.sentAt), dayIn(timeZone, line.receivedAt))]
        : [],
    )
  return {
    vendors: vendorIds.flatMap((vendorId) => {
      const own = orders.filter((order) => order.vendorId === vendorId)
      const vendor = own[0]?.vendor
      if (!vendor) return []
      return [
        {
          vendorId,
          name: vendor.name,
          phone: vendor.phone,
          orders: own.map((order) => awayOrder(order, today, timeZone)),
          turnaround: turnaround(daysTaken(vendorId)),
        },
      ]
    }),
    toSend: sendable.map((row) => ({ head: headLine(row.visit, true), step: row.label })),
    parts: waits.map((wait) => ({
      waitId: wait.id,
      version: wait.version,
      head: headLine(wait.visit, true),
      what: wait.what,
      fromWhom: wait.fromWhom,
      promisedOn: wait.promisedOn,
      days: daysBetween(dayIn(timeZone, wait.openedAt), today),
      late: wait.promisedOn !== null && wait.promisedOn < today,
      supply: bringing.get(wait.id) ?? null,
    })),
    suppliers: bySupplier(supply.map((order) => supplyView(order, { today, timeZone, withCost: false }))),
    toOrder: toOrder.map((visit) => headLine(visit, false)),
    mayOrder: can(actor, 'supply.order'),
  }
}

function bySupplier(orders: readonly SupplyView[]): Away['suppliers'] {
  const names = [...new Set(orders.map((order) => order.vendor))]
  return names.map((name) => {
    const own = orders.filter((order) => order.vendor === name)
    return { name, phone: own[0]?.phone ?? '', orders: own }
  })
}

function awayOrder(order: OrderRecord, today: string, timeZone: string): AwayOrder {
  const sentOn = dayIn(timeZone, order.sentAt ?? order.createdAt)
  const out = order.visits.filter((line) => line.receivedAt === null)
  const promises = out.flatMap((line) => (line.visit.job.promiseOn ? [line.visit.job.promiseOn] : [])).sort()
  return {
    orderId: order.id,
    number: order.number,
    scope: order.scope.split(',').filter(Boolean),
    sentOn,
    daysOut: daysBetween(sentOn, today),
    promisedOn: order.promisedOn,
    daysLate: order.promisedOn === null ? 0 : Math.max(0, daysBetween(order.promisedOn, today)),
    heads: order.visits.map((line) => headLine(line.visit, line.receivedAt !== null)),
    holdsUp: promises[0] ?? null,
  }
}
