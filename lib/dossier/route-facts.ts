import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { newestReadings, type EffectiveReading } from '@/lib/core/readings/effective'
import { measuredOutside } from '@/lib/core/route/measured-outside'
import type { StepId, WorkId } from '@/lib/core/route/step-ids'
import type { EventKind, OrderFacts, PlanFacts, RouteFacts } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import type { Deck } from '@/lib/core/straightness/corners-fit'
import { planRecordOf, stepKeyOf } from '@/lib/data/facts'
import type { VisitRecord } from '@/lib/data/visit-records'

const list = (text: string): string[] => text.split(',').filter(Boolean)

/**
 * Metal gone before this visit's cuts, in inches, at the thinnest corner: new thickness minus what was measured; null: not
 * known.
 */
export function removedBeforeIn(
  { head }: VisitRecord,
  casting: CastingFacts,
  readings: readonly EffectiveReading[],
): number | null {
  const newIn = head.newThicknessIn ?? casting.thicknessNewIn ?? null
  const measured = readings.flatMap((reading) =>
    reading.kind === 'thickness' && reading.step.stepId === 'thickness' && reading.value !== null
      ? [reading.value]
      : [],
  )
  return newIn === null || measured.length === 0 ? null : Math.max(0, newIn - Math.min(...measured))
}

/** The deck of a head as far as its casting is on record; an edge that nobody named is the exhaust edge. */
export const deckOf = (
  { head }: VisitRecord,
  casting: CastingFacts,
  { cornerInset }: Pick<ShopSettings, 'cornerInset'>,
): Deck => ({
  deepEdge: head.casting?.deepEdge === 'intake' ? 'intake' : 'exhaust',
  milledWidthIn: casting.milledWidthIn,
  deckLengthIn: casting.deckLengthIn,
  inset: cornerInsetOf(casting, cornerInset),
})

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

function orderFacts({ visit, readings, casting, settings }: RouteInputs): OrderFacts[] {
  const seqOf = (kind: EventKind, orderId: string): number | null =>
    visit.events.findLast((event) => event.kind === kind && event.orderId === orderId)?.seq ?? null
  const deck = deckOf(visit, casting, settings)
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
    measured: measuredOutside(line.orderId, readings, deck, settings.cutToleranceIn),
  }))
}

const rejectedOf = (
  seq: number | null,
  line: { rejectedAt: Date | null; rejectedWhy: string },
): OrderFacts['rejected'] => (seq === null || line.rejectedAt === null ? null : { seq, why: line.rejectedWhy })

/** A head that is bought has not come until a tag hangs on it. */
export const isOnOrder = (visit: { source: string; head: { tags: readonly unknown[] } }): boolean =>
  visit.source !== 'customer' && visit.head.tags.length === 0

export type RouteInputs = {
  readonly visit: VisitRecord
  readonly settings: ShopSettings
  readonly readings: readonly EffectiveReading[]
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly removedBeforeIn: number | null
}

/** The facts the route is computed from. */
export function routeFacts(inputs: RouteInputs): RouteFacts {
  const { visit, settings, readings, engine, removedBeforeIn: removedBefore } = inputs
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
    orders: orderFacts(inputs),
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
