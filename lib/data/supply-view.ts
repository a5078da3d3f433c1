import 'server-only'
import { dayIn } from '@/lib/core/shop/calendar'
import { orderDays, type OrderDays } from '@/lib/core/shop/order-days'
import type { SupplyToShow } from './supply'
import { orderedHead, promiseViews, type OrderedHead, type PromiseView } from './vendor-orders'

/** Whom a line is for. */
export type SupplyFor = OrderedHead & {
  readonly here: boolean
  /** Its job was pulled, or it left, while this was on order. */
  readonly pulled: boolean
}

export type SupplyLineView = {
  readonly lineId: string
  readonly kind: 'head' | 'part'
  readonly what: string
  /** "58.0 cc nominal", as its maker says; '' when it is not on record. */
  readonly nominal: string
  readonly quantity: number
  readonly arrived: number
  readonly for: readonly SupplyFor[]
  /** A piece, in minor units; left out for those who may not see it. */
  readonly costMinor?: number | null
}

export type SupplyView = OrderDays & {
  readonly orderId: string
  readonly number: string
  readonly version: number
  readonly vendor: string
  readonly phone: string
  readonly jobNumber: string | null
  readonly note: string
  readonly orderedOn: string
  readonly promisedOn: string | null
  readonly lines: readonly SupplyLineView[]
  readonly promises: readonly PromiseView[]
  readonly open: boolean
  readonly endReason: string
}

const gone = ['returned as is', 'handed over', 'scrapped', 'taken off']

type VisitOfLine = SupplyToShow['lines'][number]['heads'][number]['visit']

const forVisit = (visit: VisitOfLine, here: boolean): SupplyFor => ({
  ...orderedHead(visit),
  here,
  pulled: gone.includes(visit.place?.whereabouts ?? ''),
})

type Line = SupplyToShow['lines'][number]

function lineView(line: Line, withCost: boolean): SupplyLineView {
  const variant = line.variant
  return {
    lineId: line.id,
    kind: line.kind === 'head' ? 'head' : 'part',
    what: [variant?.casting.name, line.what].filter(Boolean).join(', '),
    nominal: variant && variant.nominalText !== '' ? `${variant.nominalText} cc nominal` : '',
    quantity: line.quantity,
    arrived: line.arrived,
    for: [
      ...line.heads.map(({ visit, arrivedAt }) => forVisit(visit, arrivedAt !== null)),
      ...(line.wait ? [forVisit(line.wait.visit, line.wait.arrivedAt !== null)] : []),
    ],
    ...(withCost ? { costMinor: line.costMinor } : {}),
  }
}

/** The promises to customers that this order holds up. */
const promisesHeld = (order: SupplyToShow): (string | null)[] =>
  order.lines
    .flatMap((line) => [
      ...line.heads.flatMap(({ visit, arrivedAt }) => (arrivedAt === null ? [visit] : [])),
      ...(line.wait && line.wait.arrivedAt === null ? [line.wait.visit] : []),
    ])
    .flatMap(({ job, place }) => (gone.includes(place?.whereabouts ?? '') ? [] : [job.promiseOn]))

export function supplyView(
  order: SupplyToShow,
  { today, timeZone, withCost }: { today: string; timeZone: string; withCost: boolean },
): SupplyView {
  const orderedOn = dayIn(timeZone, order.createdAt)
  const open = order.arrivedAt === null && order.endedAt === null
  return {
    orderId: order.id,
    number: order.number,
    version: order.version,
    vendor: order.vendor.name,
    phone: order.vendor.phone,
    jobNumber: order.job?.number ?? null,
    note: order.note,
    orderedOn,
    promisedOn: order.promisedOn,
    ...orderDays({ since: orderedOn, promisedOn: order.promisedOn, isOpen: open, waiting: promisesHeld(order) }, today),
    lines: order.lines.map((line) => lineView(line, withCost)),
    promises: promiseViews(order.promises),
    open,
    endReason: order.endReason,
  }
}
