import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { addDays, dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { turnaround, type Turnaround } from '@/lib/core/shop/turnaround'
import { db } from '@/lib/data/db'
import {
  headsNobodyOrdered,
  openWaits,
  ordersOut,
  stepsToSend,
  supplyOut,
  type ListedOrder,
} from '@/lib/data/away-list'
import { shopWithSettings } from '@/lib/data/shop-settings'
import { supplyView, type SupplyView } from '@/lib/data/supply-view'
import type { Whereabouts } from '@/lib/core/route/types'
import { finishesOf } from '@/lib/dossier/finish/finishes'
import { callsOf, type Call } from './away-calls'
import { awayOrder, byPromise, headLine, type AwayHead, type AwayOrder } from './away-order'
import { boxesOf, type Box } from './full-boxes'

export type { AwayHead, AwayOrder } from './away-order'

export type AwayVendor = {
  readonly vendorId: string
  readonly name: string
  readonly phone: string
  readonly orders: readonly AwayOrder[]
  /** Null: nothing has come back from this vendor yet. */
  readonly turnaround: Turnaround | null
  /** Whole days that each head took which came back, newest first. */
  readonly daysTaken: readonly number[]
}

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
  /** All orders, the promise at the greatest risk first. */
  readonly byPromise: readonly AwayOrder[]
  readonly calls: readonly Call[]
  readonly boxes: readonly Box[]
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
  readonly locale: string
  /** Whether another page of one of the lists follows. */
  readonly more: boolean
}

/** What is out, with whom, for how long, and what it holds up; what could go out; what waits for parts. */
export async function seeAway(actor: Actor, now: Date, page = 1): Promise<Away> {
  must(allow(actor, 'outside.see'))
  const client = await db()
  const { timeZone, locale, settings } = await shopWithSettings(client)
  const today = dayIn(timeZone, now)
  const [out, sendable, waits, supply, toOrder] = await Promise.all([
    ordersOut(client, page),
    stepsToSend(client, page),
    openWaits(client, page),
    supplyOut(client, page, null),
    headsNobodyOrdered(client, page),
  ])
  const orders = out.rows
  const finishes = await finishesOf(client, headsOut(orders), { now, timeZone, settings })
  const vendorIds = [...new Set(orders.map((order) => order.vendorId))]
  const daysTaken = (vendorId: string): number[] =>
    finishes.took.flatMap(({ kind, key, fromAt, toAt }) =>
      kind === 'vendor' && key === vendorId && toAt
        ? [daysBetween(dayIn(timeZone, fromAt), dayIn(timeZone, toAt))]
        : [],
    )
  const taken = new Map(vendorIds.map((id) => [id, daysTaken(id)]))
  const shown = orders.map((order) =>
    awayOrder(order, {
      ...{ took: turnaround(taken.get(order.vendorId) ?? []), today, timeZone },
      ...{ samples: finishes.record.ofVendor(order.vendorId), finishes: finishes.of },
    }),
  )
  const callsCustomers = can(actor, 'call.log')
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
          orders: shown.filter((order) => own.some((record) => record.id === order.orderId)),
          turnaround: turnaround(taken.get(vendorId) ?? []),
          daysTaken: taken.get(vendorId) ?? [],
        },
      ]
    }),
    byPromise: byPromise(shown),
    calls: callsOf(orders, shown, {
      tomorrow: addDays(today, 1),
      callsCustomers,
      manner: { timeZone, locale },
    }),
    boxes: boxesOf(sendable.rows, finishes.took),
    parts: waits.rows.map((wait) => ({
      waitId: wait.id,
      version: wait.version,
      head: headLine(wait.visit, true),
      what: wait.what,
      fromWhom: wait.fromWhom,
      promisedOn: wait.promisedOn,
      days: daysBetween(dayIn(timeZone, wait.openedAt), today),
      late: wait.promisedOn !== null && wait.promisedOn < today,
      supply: wait.supply,
    })),
    suppliers: bySupplier(supply.rows.map((order) => supplyView(order, { today, timeZone, withCost: false }))),
    toOrder: toOrder.rows.map((visit) => headLine(visit, false)),
    mayOrder: can(actor, 'supply.order'),
    locale,
    more: [out, sendable, waits, supply, toOrder].some((list) => list.more),
  }
}

/** Heads that are still at a vendor, each once. */
function headsOut(orders: readonly ListedOrder[]) {
  const out = orders.flatMap(({ visits }) => visits.filter(({ receivedAt }) => receivedAt === null))
  return [...new Map(out.map(({ visit }) => [visit.id, visit])).values()].map((visit) => ({
    ...{ id: visit.id, bookedAt: visit.bookedAt, urgent: visit.urgent, promiseOn: visit.job.promiseOn },
    whereabouts: visit.whereabouts as Whereabouts,
  }))
}

function bySupplier(orders: readonly SupplyView[]): Away['suppliers'] {
  const names = [...new Set(orders.map((order) => order.vendor))]
  return names.map((name) => {
    const own = orders.filter((order) => order.vendor === name)
    return { name, phone: own[0]?.phone ?? '', orders: own }
  })
}
