import 'server-only'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { ReadingFact, ReadingKind } from '@/lib/core/readings/types'
import { measuredOutside } from '@/lib/core/route/measured-outside'
import type { EventKind, OrderFacts, PlanFacts, RouteFacts, RouteSettings } from '@/lib/core/route/types'
import type { StepId, StepKey, WorkId } from '@/lib/core/route/step-ids'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import { castingFactsOf, engineFactsOf } from './known-figures'

/** Everything that is known of a visit, in one query. */
export const visitInclude = {
  job: { include: { engine: { include: { figures: true } } } },
  head: { include: { casting: { include: { figures: true, outlines: true, bolts: true } }, tags: true } },
  pair: {
    include: {
      visits: { select: { id: true } },
      plans: { include: { exceptions: true, acceptances: true }, orderBy: { number: 'desc' } },
    },
  },
  ordered: true,
  events: { orderBy: { seq: 'asc' } },
  readings: { include: { points: true }, orderBy: { eventSeq: 'asc' } },
  findings: true,
  waits: true,
  holds: true,
  waivers: true,
  releases: { orderBy: { revision: 'desc' } },
  returned: true,
  handOver: true,
  outside: { include: { order: { include: { vendor: true } } }, orderBy: { id: 'asc' } },
  photos: true,
  place: true,
} as const satisfies Prisma.VisitInclude

export type VisitRecord = Prisma.VisitGetPayload<{ include: typeof visitInclude }>
type SetRecord = VisitRecord['readings'][number]

const list = (text: string): string[] => text.split(',').filter(Boolean)

export const stepKeyOf = (row: { stepId: string; occurrence: string; orderId: string | null }): StepKey => ({
  stepId: row.stepId as StepId,
  occurrence: row.occurrence,
  orderId: row.orderId,
})

export type EffectiveReading = ReadingFact & {
  readonly step: StepKey
  readonly setId: string
  readonly unit: string
  readonly takenAt: Date
  readonly byId: string
  readonly instrumentId: string | null
  readonly instrumentCheckedOn: string | null
  readonly conditions: string
  /** The correction that stands, with its reason; '' when it is the first answer. */
  readonly correctionReason: string
}

/** Corrections applied (each keeps the place in time of what it corrects), withdrawn ones gone, oldest first. */
export function effectiveReadings(sets: readonly SetRecord[]): EffectiveReading[] {
  const points = sets.flatMap((set) => set.points.map((point) => ({ set, point })))
  const corrections = new Map(
    points.flatMap((entry) => (entry.point.correctsId ? [[entry.point.correctsId, entry] as const] : [])),
  )
  const newest = (entry: (typeof points)[number]): (typeof points)[number] => {
    const next = corrections.get(entry.point.id)
    return next ? newest(next) : entry
  }
  return points
    .filter(({ point }) => point.correctsId === null)
    .map((original) => ({ original, standing: newest(original) }))
    .filter(({ standing }) => standing.point.correction !== 'withdraw')
    .map(({ original, standing }) => ({
      id: standing.point.id,
      seq: original.set.eventSeq,
      kind: standing.point.kind as ReadingKind,
      point: standing.point.point,
      value: standing.point.value,
      text: standing.point.text,
      unit: standing.point.unit,
      notTaken: standing.point.notTaken,
      step: stepKeyOf(original.set),
      setId: original.set.id,
      takenAt: original.set.takenAt,
      byId: standing.set.byId,
      instrumentId: original.set.instrumentId,
      instrumentCheckedOn: original.set.instrumentCheckedOn,
      conditions: original.set.conditions,
      correctionReason: standing.point.reason,
    }))
    .sort((a, b) => a.seq - b.seq)
}

/** The newest answer at each step, kind and point. */
export function newestReadings(readings: readonly EffectiveReading[]): EffectiveReading[] {
  const byPlace = new Map<string, EffectiveReading>()
  for (const reading of readings) {
    const { stepId, occurrence, orderId } = reading.step
    byPlace.set([stepId, occurrence, orderId ?? '', reading.kind, reading.point].join('|'), reading)
  }
  return [...byPlace.values()]
}

export const planRecordOf = (plan: { results: string }): PlanRecord => JSON.parse(plan.results) as PlanRecord

/** Metal gone before this visit's cuts, at the thinnest corner: new thickness minus what was measured; null: not known. */
export function removedBeforeIn(visit: VisitRecord, readings: readonly EffectiveReading[]): number | null {
  const newIn =
    visit.head.newThicknessIn ?? castingFactsOf(visit.head.casting, visit.head.chamberForm).thicknessNewIn ?? null
  const measured = readings.flatMap((reading) =>
    reading.kind === 'thickness' && reading.step.stepId === 'thickness' && reading.value !== null
      ? [reading.value]
      : [],
  )
  return newIn === null || measured.length === 0 ? null : Math.max(0, newIn - Math.min(...measured))
}

function planFacts(visit: VisitRecord, index: number, removedBefore: number | null): PlanFacts | null {
  const plan = visit.pair.plans[index]
  if (!plan) return null
  const record = planRecordOf(plan)
  const exception = plan.exceptions.find((entry) => entry.visitId === visit.id)
  const flatIn = exception?.flatIn ?? record.flatIn
  const angleIn = exception?.angleIn ?? record.angleIn
  const losses = [record.ptvLossIntakeIn, record.ptvLossExhaustIn].filter((loss) => loss !== null)
  return {
    kind: record.kind,
    flatIn,
    angleIn,
    angleDeg: record.angleDeg ?? 0,
    deepestIn: flatIn + angleIn,
    totalRemovedIn: removedBefore === null ? null : removedBefore + flatIn + angleIn,
    intakeSideIn: record.intakeSideIn,
    ptvLossIn: losses.length === 0 ? null : Math.max(...losses),
    rateProven: record.rateProven,
  }
}

function orderFacts(visit: VisitRecord, readings: readonly EffectiveReading[], toleranceIn: number): OrderFacts[] {
  const seqOf = (kind: EventKind, orderId: string): number | null =>
    visit.events.findLast((event) => event.kind === kind && event.orderId === orderId)?.seq ?? null
  const { deepEdge } = visit.head.casting ?? {}
  const { milledWidthIn, deckLengthIn } = castingFactsOf(visit.head.casting, visit.head.chamberForm)
  const deck = { deepEdge: deepEdge === 'intake' ? 'intake' : 'exhaust', milledWidthIn, deckLengthIn } as const
  return visit.outside.map((line) => ({
    orderId: line.orderId,
    number: line.order.number,
    vendor: line.order.vendor.name,
    scope: list(line.order.scope) as StepId[],
    angleIn: line.angleIn,
    flatIn: line.flatIn,
    sentSeq: seqOf('sent', line.orderId),
    receivedSeq: seqOf('received', line.orderId),
    confirmed: list(line.confirmed) as StepId[],
    seatsIn: line.seatsIn,
    confirmedSeqs: Object.fromEntries(
      visit.events
        .filter((event) => event.kind === 'confirm' && event.orderId === line.orderId)
        .map((event) => [event.stepId, event.seq]),
    ),
    rejected: rejectedOf(seqOf('reject', line.orderId), line),
    measured: measuredOutside(line.orderId, readings, deck, toleranceIn),
  }))
}

const rejectedOf = (
  seq: number | null,
  line: { rejectedAt: Date | null; rejectedWhy: string },
): OrderFacts['rejected'] => (seq === null || line.rejectedAt === null ? null : { seq, why: line.rejectedWhy })

/** A head that is bought has not come until a tag hangs on it. */
export const isOnOrder = (visit: { source: string; head: { tags: readonly unknown[] } }): boolean =>
  visit.source !== 'customer' && visit.head.tags.length === 0

/** Beside the route's own limits, how far a cut may be off and still count as what was ordered. */
export type FactSettings = RouteSettings & Pick<ShopSettings, 'cutToleranceIn'>

/** The facts the route is computed from. */
export function routeFacts(visit: VisitRecord, settings: FactSettings): RouteFacts {
  const readings = effectiveReadings(visit.readings)
  const removedBefore = removedBeforeIn(visit, readings)
  const engine = engineFactsOf(visit.job.engine)
  const clearances = [engine.intakePtvIn, engine.exhaustPtvIn].filter((value) => value !== undefined)
  return {
    source: visit.source as RouteFacts['source'],
    onOrder: isOnOrder(visit),
    used: visit.used,
    cameAssembled: visit.cameAssembled,
    overheated: visit.overheated,
    ordered: visit.ordered.filter((line) => !line.endedAt).map((line) => line.work as WorkId),
    chambers: visit.head.casting?.chamberCount ?? 4,
    plan: planFacts(visit, 0, removedBefore),
    previousPlan: planFacts(visit, 1, removedBefore),
    targetCc: visit.targetCc,
    classMinCc: visit.job.classMinCc,
    hasEngineData: (visit.job.engine?.figures.length ?? 0) > 0,
    camInHead: engine.camInHead,
    manifoldSpansHeads: { v: true, inline: false, unknown: null }[engine.layout],
    remainingPtvIn: clearances.length === 0 ? null : Math.min(...clearances),
    finishAsked: visit.job.finishAsked !== '',
    orders: orderFacts(visit, readings, settings.cutToleranceIn),
    events: visit.events.map((event) => ({
      seq: event.seq,
      kind: event.kind as EventKind,
      step: event.stepId === null ? null : stepKeyOf({ ...event, stepId: event.stepId }),
    })),
    readings: newestReadings(readings),
    partsWaits: visit.waits.map((wait) => ({
      step: stepKeyOf({ ...wait, orderId: null }),
      what: wait.what,
      open: wait.arrivedAt === null,
    })),
    openHolds: visit.holds.filter((hold) => hold.decidedAt === null).map((hold) => ({ reason: hold.reason })),
    openFindings: visit.findings.filter((finding) => finding.answer === null).length,
    waivedGaps: visit.waivers.map((waiver) => waiver.gap),
    settings,
  }
}
