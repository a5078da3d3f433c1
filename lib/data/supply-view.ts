import 'server-only'
import { daysBetween, dayIn } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import type { SupplyToShow } from './supply'

/** Whom a line is for: a head by its tag, or by its place on the job while it has none. */
export type SupplyFor = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
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

export type SupplyView = {
  readonly orderId: string
  readonly number: string
  readonly version: number
  readonly vendor: string
  readonly phone: string
  readonly jobNumber: string | null
  readonly note: string
  readonly orderedOn: string
  readonly daysSince: number
  readonly promisedOn: string | null
  /** Days over the supplier's promise; 0: not late, or nothing is to come any more. */
  readonly daysLate: number
  /** The earliest promise to a customer that waits for it. */
  readonly holdsUp: string | null
  readonly lines: readonly SupplyLineView[]
  readonly promises: readonly { readonly id: string; readonly on: string; readonly note: string }[]
  readonly open: boolean
  readonly endReason: string
}

const gone = ['returned as is', 'handed over', 'scrapped']

type VisitOfLine = SupplyToShow['lines'][number]['heads'][number]['visit']

const forVisit = (visit: VisitOfLine, here: boolean): SupplyFor => ({
  visitId: visit.id,
  headId: visit.headId,
  tag: headName(visit.head.tags, visit.job.number, visit.position),
  jobNumber: visit.job.number,
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
const promisesHeld = (order: SupplyToShow): string[] =>
  order.lines
    .flatMap((line) => [
      ...line.heads.flatMap(({ visit, arrivedAt }) => (arrivedAt === null ? [visit] : [])),
      ...(line.wait && line.wait.arrivedAt === null ? [line.wait.visit] : []),
    ])
    .flatMap(({ job, place }) => (job.promiseOn && !gone.includes(place?.whereabouts ?? '') ? [job.promiseOn] : []))
    .sort()

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
    daysSince: daysBetween(orderedOn, today),
    promisedOn: order.promisedOn,
    daysLate: open && order.promisedOn !== null ? Math.max(0, daysBetween(order.promisedOn, today)) : 0,
    holdsUp: promisesHeld(order)[0] ?? null,
    lines: order.lines.map((line) => lineView(line, withCost)),
    promises: order.promises.map(({ id, promisedOn, note }) => ({ id, on: promisedOn, note })),
    open,
    endReason: order.endReason,
  }
}
