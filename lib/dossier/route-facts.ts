import { chamberShapeOf } from '@/lib/core/casting/chamber-shape'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'
import type { Result } from '@/lib/core/errors'
import { flatDeckFactsOf } from '@/lib/core/flat-deck/past-maker'
import { goneByCut, mostGoneIn, sumOfGone } from '@/lib/core/head-now/gone'
import type { MetalGone } from '@/lib/core/head-now/metal-gone'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { valveCountsOf } from '@/lib/core/readings/valves'
import { measuredOutside } from '@/lib/core/route/measured-outside'
import type { StepId, WorkId } from '@/lib/core/route/step-ids'
import type { EventKind, OrderFacts, PlanFacts, RouteFacts, VisitEvent } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import type { Deck } from '@/lib/core/straightness/corners-fit'
import type { Wanted } from '@/lib/core/wanted/wanted-of'
import { planRecordOf, stepKeyOf } from '@/lib/data/facts'
import type { VisitRecord } from '@/lib/data/visit-records'

const list = (text: string): string[] => text.split(',').filter(Boolean)

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

function planFacts(visit: VisitRecord, index: number, gone: Result<MetalGone>): PlanFacts | null {
  const plan = visit.pair.plans[index]
  if (!plan) return null
  const record = planRecordOf(plan)
  const exception = plan.exceptions.find((entry) => entry.visitId === visit.id)
  const flatIn = exception?.flatIn ?? record.flatIn
  const angleIn = exception?.angleIn ?? record.angleIn
  const { deepEdge } = record
  const losses = [record.ptvLossIntakeIn, record.ptvLossExhaustIn].filter((loss) => loss !== null)
  return {
    kind: record.kind,
    flatIn,
    angleIn,
    angleDeg: record.angleDeg ?? 0,
    deepestIn: flatIn + angleIn,
    totalRemovedIn: gone.ok ? mostGoneIn(sumOfGone([gone.value.gone, goneByCut({ flatIn, angleIn, deepEdge })])) : null,
    intakeSideIn: record.intakeSideIn,
    ptvLossIn: losses.length === 0 ? null : Math.max(...losses),
    rateProven: record.rateProven,
  }
}

export function orderFacts({ visit, readings, casting, settings }: RouteInputs): OrderFacts[] {
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

/** Four where no casting is on record. */
export const chambersOf = ({ head }: VisitRecord): number => head.casting?.chamberCount ?? 4

/** A head that is bought has not come until a tag hangs on it. */
export const isOnOrder = (visit: { source: string; head: { tags: readonly unknown[] } }): boolean =>
  visit.source !== 'customer' && visit.head.tags.length === 0

export type RouteInputs = {
  readonly visit: VisitRecord
  readonly settings: ShopSettings
  readonly readings: readonly EffectiveReading[]
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly metalGone: Result<MetalGone>
  /** What the benches work to on it. */
  readonly wanted: Wanted
}

const isFlatDeck = (visit: VisitRecord): boolean => chamberShapeOf(visit.head.casting?.chamberShape) === 'flat-deck'

/** The events of a visit as the route sees them. */
export const eventFacts = (visit: VisitRecord): VisitEvent[] =>
  visit.events.map((event) => ({
    seq: event.seq,
    kind: event.kind as EventKind,
    step: event.stepId === null ? null : stepKeyOf({ ...event, stepId: event.stepId }),
  }))

/** The facts the route is computed from; `newest`: the answer that counts at each point. */
export function routeFacts(inputs: RouteInputs, newest: readonly EffectiveReading[]): RouteFacts {
  const { visit, settings, casting, engine, metalGone } = inputs
  const chambers = chambersOf(visit)
  const flatDeck = isFlatDeck(visit) ? flatDeckFactsOf(casting, chambers) : null
  const clearances = [engine.intakePtvIn, engine.exhaustPtvIn].filter((value) => value !== undefined)
  return {
    source: visit.source as RouteFacts['source'],
    onOrder: isOnOrder(visit),
    used: visit.used,
    cameAssembled: visit.cameAssembled,
    overheated: visit.overheated,
    ordered: visit.ordered.filter((line) => !line.endedAt).map((line) => line.work as WorkId),
    chambers,
    flatDeck,
    valves: valveCountsOf(casting),
    valveLimits: {
      limits: settings,
      liftIn: { intake: engine.intakeLiftIn ?? null, exhaust: engine.exhaustLiftIn ?? null },
      wanted: inputs.wanted,
    },
    plan: planFacts(visit, 0, metalGone),
    previousPlan: planFacts(visit, 1, metalGone),
    // What the job says of cc is for its heads with chambers.
    targetCc: flatDeck ? null : visit.targetCc,
    classMinCc: flatDeck ? null : visit.job.classMinCc,
    hasEngineData: (visit.job.engine?.figures.length ?? 0) > 0,
    camInHead: engine.camInHead,
    manifoldSpansHeads: { v: true, inline: false, unknown: null }[engine.layout],
    remainingPtvIn: clearances.length === 0 ? null : Math.min(...clearances),
    finishAsked: visit.job.finishAsked !== '',
    orders: orderFacts(inputs),
    events: eventFacts(visit),
    readings: newest,
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
