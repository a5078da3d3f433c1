import { ccBeforeCut } from '@/lib/core/at-mill/cc-at'
import { newTouchOff, touchOffDepth } from '@/lib/core/at-mill/touch-off'
import { centroidShareOf } from '@/lib/core/cut/split'
import { isBeforeCut } from '@/lib/core/expected/chamber'
import { expectedLimitsOf } from '@/lib/core/expected/limits'
import { figureKey, type CutSince, type ExpectedFacts, type Figures, type SeatFacts } from '@/lib/core/expected/types'
import { deckNow } from '@/lib/core/head-now/deck-now'
import { seatOfValve } from '@/lib/core/head-now/seat-now'
import { mean } from '@/lib/core/mean'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { ReadingKind } from '@/lib/core/readings/types'
import { groupOf } from '@/lib/core/readings/valves'
import { sameKey } from '@/lib/core/route/keys'
import type { StepId } from '@/lib/core/route/step-ids'
import type { RouteStep } from '@/lib/core/route/types'
import { namedCircle, type Port } from '@/lib/core/seat/seat-of-record'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Reader } from '@/lib/data/db'
import { readingConditions, type Conditions } from '@/lib/data/stored/records'
import { learnedRecord } from './casting-rate'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'
import { runNumber } from './flow-run'
import { cornersBefore, newThicknessIn, seatsBefore } from './metal-gone'
import { nextPassAtMill, ownRateOf } from './next-pass'
import { deckOf } from './route-facts'
import { thicknessStop } from './thickness-at-mill'

type Valued = EffectiveReading & { readonly value: number }

/** Everything that the readings of one step of a head are held against. `conditions`: of a flow run, as typed. */
export async function expectedFacts(
  reader: Reader,
  head: Dossier,
  step: RouteStep,
  mates: readonly Dossier[],
  conditions: Conditions,
): Promise<ExpectedFacts> {
  const { settings, casting, engine, chambers, readings } = head
  const deck = deckOf(head.visit, casting, settings)
  const touchOff = touchOffDepth(readings)
  const millDepthIn = touchOff.fromTouchOffIn
  return {
    stepId: step.stepId,
    chambers,
    limits: expectedLimitsOf(settings),
    here: readHere(head, step, conditions),
    before: readBefore(head),
    mate: matesMeans(mates, step),
    deepEdge: deck.deepEdge,
    milledWidthIn: casting.milledWidthIn ?? null,
    edgeInsetIn: deck.inset?.edgeIn ?? null,
    cut: cutSince(head),
    millDepthIn,
    chamber: await chamberFacts(reader, head, step),
    thickness: {
      newIn: newThicknessIn(head.visit, casting),
      goneIn: isNew(head) ? 0 : null,
      earlier: earlierHere(head),
    },
    seats: { intake: seatFacts(head, 'intake'), exhaust: seatFacts(head, 'exhaust') },
    seatWorkSince: workedSince(head, ['seat-work', 'inserts'], 'seat-before'),
    mill: await millFacts(reader, head, step, touchOff),
    straightness: {
      acrossIn: settings.straightAcrossIn,
      alongIn: settings.straightAlongPerCylinderIn * chambers,
    },
    ...flowFacts(head, step, conditions),
    wanted: head.wanted,
    liftIn: { intake: engine.intakeLiftIn ?? null, exhaust: engine.exhaustLiftIn ?? null },
    shimsIn: head.today.values.valveLists.shimsIn,
  }
}

const hasValue = (reading: EffectiveReading): reading is Valued => reading.value !== null

const figuresOf = (readings: readonly Valued[]): Figures =>
  Object.fromEntries(readings.map(({ kind, point, value }) => [figureKey(kind, point), value]))

/** What was gone when it last left this shop, where less was. */
const earlierHere = ({ earlier }: Dossier): ExpectedFacts['thickness']['earlier'] =>
  earlier && { goneIn: Math.min(earlier.gone.atIntakeEdgeIn, earlier.gone.atExhaustEdgeIn), job: earlier.job }

const isNew = ({ visit }: Dossier): boolean => !visit.used && visit.source !== 'bought-cut'

/** What counts at this step: not what later work undid, and of the flow bench only what belongs to this run. */
function readHere({ newest }: Dossier, step: RouteStep, conditions: Conditions): Figures {
  const undone = new Set(step.owes.flatMap(({ kind, missing }) => missing.map((point) => figureKey(kind, point))))
  const run = runNumber({ id: '', conditions: readingConditions.write(conditions) })
  return figuresOf(
    newest
      .filter(hasValue)
      .filter((reading) => sameKey(reading.step, step))
      .filter(({ kind, point }) => !undone.has(figureKey(kind, point)))
      .filter(
        (reading) =>
          reading.kind !== 'flow' || runNumber({ id: reading.setId, conditions: reading.conditions }) === run,
      ),
  )
}

/** What other steps read at the valves, and this one is reckoned from. */
const ofTheValves: readonly ReadingKind[] = [
  'sink',
  'coil-bind',
  'installed-height',
  'retainer-to-seal',
  'shims',
  'spring-rate',
]

/** Of the shims only those that were in when the installed height was measured. */
const isOfValves = ({ kind, step }: EffectiveReading): boolean =>
  ofTheValves.includes(kind) && (kind !== 'shims' || step.stepId === 'heights')

function readBefore(head: Dossier): Figures {
  const { readings } = head
  const chambers = [...ccBeforeCut(readings, cutFactsOf(head).burette).chambers]
  // Metal that was welded on makes a corner thicker.
  const corners =
    readings.some(({ step }) => step.stepId === 'weld') || ticked(head, ['weld']) ? {} : cornersBefore(readings)
  return {
    ...figuresOf(readings.filter(hasValue).filter(isOfValves)),
    ...Object.fromEntries(chambers.map(([chamber, { meanCc }]) => [figureKey('cc', chamber), meanCc])),
    ...Object.fromEntries(
      Object.entries(corners).flatMap(([corner, value]) =>
        typeof value === 'number' ? [[figureKey('thickness', corner), value]] : [],
      ),
    ),
    ...figuresOf(
      readings
        .filter(hasValue)
        .filter(({ kind, step }) => step.stepId === 'seat-before' && (kind === 'recession' || kind === 'protrusion')),
    ),
    ...Object.fromEntries(
      seatsBefore(readings).map(({ valve, depthFromDeckNowIn }) => [
        figureKey('seat-depth', valve),
        depthFromDeckNowIn,
      ]),
    ),
  }
}

/** Means of the other heads of the pair at the like step: over the chambers, and by kind and port. */
function matesMeans(mates: readonly Dossier[], { stepId }: RouteStep): Figures {
  const groups = new Map<string, number[]>()
  const read = mates.flatMap(({ newest }) => newest.filter(hasValue).filter(({ step }) => step.stepId === stepId))
  for (const { kind, point, value } of read) {
    const key = kind === 'cc' ? (/^\d+$/.test(point) ? figureKey('cc', '') : null) : figureKey(kind, groupOf(point))
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), value])
  }
  return Object.fromEntries([...groups].map(([key, values]) => [key, mean(values)]))
}

const noCut: CutSince = { shallowIn: 0, deepIn: 0 }

function cutSince(head: Dossier): CutSince | null {
  const cut = shopCutOf(cutFactsOf(head))
  return cut === null ? noCut : cut.edges
}

const ticked = ({ visit, facts }: Dossier, steps: readonly StepId[], since = 0): boolean =>
  visit.events.some(({ kind, seq, stepId }) => kind === 'tick' && seq > since && steps.some((one) => one === stepId)) ||
  facts.orders.some(
    ({ confirmed, receivedSeq }) => (receivedSeq ?? 0) > since && confirmed.some((one) => steps.includes(one)),
  )

/** Whether one of these steps was done after the readings of another. */
function workedSince(head: Dossier, steps: readonly StepId[], readAt: StepId): boolean {
  const since = head.readings.findLast(({ step }) => step.stepId === readAt)?.seq ?? 0
  return ticked(head, steps, since)
}

/** Work that changes what a chamber holds, the deck's cuts aside. */
const chamberWork: readonly StepId[] = ['seat-work', 'inserts', 'guides', 'port', 'weld', 'groove']

async function chamberFacts(reader: Reader, head: Dossier, step: RouteStep): Promise<ExpectedFacts['chamber']> {
  const { visit, casting, settings } = head
  const prior = rateOfRecord(casting)
  const record = await learnedRecord(reader, {
    castingId: visit.head.castingId,
    form: visit.head.chamberForm,
    facts: casting,
    depthThou: null,
    settings,
    exceptVisitId: visit.id,
  })
  const learned = record.rate
  const own = await ownRateOf(reader, head, record)
  const rate = own ?? learned
  const ccRead = [...ccBeforeCut(head.readings, cutFactsOf(head).burette).chambers]
  const opened = head.readings.some(({ kind, step }) => kind === 'cc' && step.stepId === 'open-chamber')
  return {
    repeatabilityCc: settings.ccRepeatabilityCc,
    divisionCc: settings.buretteDivisionCc,
    uBeforeCc: Object.fromEntries(ccRead.map(([chamber, { uCc }]) => [chamber, uCc])),
    centroidShare: centroidShareOf(casting),
    rate: {
      ccPerThou: rate.ccPerThou,
      uCcPerThou: rate.uCcPerThou,
      priorCcPerThou: prior.ok ? prior.value.ccPerThou : learned.ccPerThou,
      // What its own cut showed holds the spread between heads already.
      betweenHeadPart: own ? 0 : settings.betweenHeadPart,
    },
    depthErrorThou: settings.depthSettingErrorThou,
    nominalLessGoneCc: nominalLessGone(head, isBeforeCut(step) ? noCut : cutSince(head), learned.ccPerThou),
    workedSince: opened
      ? workedSince(head, chamberWork, 'open-chamber')
      : workedSince(head, [...chamberWork, 'open-chamber'], 'chambers'),
  }
}

/** What the customer said it holds, else its nominal volume less what was cut before; less this visit's cut. */
function nominalLessGone(head: Dossier, cut: CutSince | null, ccPerThou: number): number | null {
  const { visit, casting, removedBeforeIn } = head
  const goneBeforeCc = (removedBeforeIn ?? 0) * 1000 * ccPerThou
  const whenCame = visit.presentCc ?? (casting.nominalCc === undefined ? null : casting.nominalCc - goneBeforeCc)
  if (whenCame === null || cut === null || visit.head.chamberForm === 'opened') return null
  const share = centroidShareOf(casting) ?? 0.5
  return whenCame - (cut.shallowIn + (cut.deepIn - cut.shallowIn) * share) * 1000 * ccPerThou
}

function seatFacts({ casting, metalGone, visit, settings }: Dossier, port: Port): SeatFacts {
  const { deepEdge } = deckOf(visit, casting, settings)
  const deck = metalGone.ok ? deckNow(metalGone.value.gone, deepEdge, casting.milledWidthIn) : null
  const seat = seatOfValve(`1-${port}`, { record: casting, port, deck: deck?.ok ? deck.value : null, readings: [] })
  if (!seat.ok) return { recordNowIn: null, xIn: null, radiusIn: null, valveAngleDeg: null }
  const { seat: placed, depthFromDeckNowIn } = seat.value
  const diameterIn = placed.circles[namedCircle].diameterIn ?? null
  return {
    recordNowIn: depthFromDeckNowIn,
    xIn: placed.xIn ?? null,
    radiusIn: diameterIn === null ? null : diameterIn / 2,
    valveAngleDeg: placed.valveAngleDeg ?? null,
  }
}

const noMill: ExpectedFacts['mill'] = {
  adviceIn: null,
  planFlatIn: null,
  planAngleIn: null,
  leftIn: null,
  lastTotalIn: null,
  touchedOffAnew: false,
}

/** What may be cut at the mill: the advised stop, the plan's part, and the metal over the least thickness. */
async function millFacts(
  reader: Reader,
  head: Dossier,
  { stepId }: RouteStep,
  { totalIn, fromTouchOffIn }: ReturnType<typeof touchOffDepth>,
): Promise<ExpectedFacts['mill']> {
  const { plan, casting, readings, visit } = head
  if (stepId === 'angle-cut') return { ...noMill, planAngleIn: plan?.angleIn ?? null }
  if (stepId !== 'flat-cut') return noMill
  const outsideIn = visit.outside.reduce((sum, order) => sum + order.flatIn, 0)
  const thinnestIn = Math.min(...Object.values(cornersBefore(readings)).filter((corner) => typeof corner === 'number'))
  const leastIn = casting.thicknessLeastIn
  const toThickness = plan?.flatDeck && plan.kind === 'flat' ? thicknessStop(head, plan).depthIn : null
  const pass = plan && plan.kind !== 'clean-up' && !plan.flatDeck ? await nextPassAtMill(reader, head, plan) : null
  const stopAtThou = pass?.stopAtThou ?? null
  return {
    ...noMill,
    adviceIn: stopAtThou === null ? null : stopAtThou / 1000,
    planFlatIn: plan ? Math.max(0, (toThickness ?? plan.flatIn) - outsideIn - (totalIn - fromTouchOffIn)) : null,
    leftIn: leastIn === undefined || !Number.isFinite(thinnestIn) ? null : thinnestIn - leastIn,
    lastTotalIn: fromTouchOffIn > 0 ? fromTouchOffIn : null,
  }
}

const pressureOf = (conditions: Conditions): number | null => {
  const parsed = parseFigure(conditions.testPressureInH2O ?? '', 'testPressure')
  return parsed.ok ? parsed.value.value : null
}

/** The run before at this pressure, and the leak of this one. */
function flowFacts(
  { readings }: Dossier,
  step: RouteStep,
  conditions: Conditions,
): Pick<ExpectedFacts, 'runBefore' | 'leakCfm'> {
  const leak = parseFigure(conditions.leakCfm ?? '', 'flow')
  const leakCfm = leak.ok ? leak.value.value : null
  const pressure = pressureOf(conditions)
  if (step.stepId !== 'flow' || pressure === null) return { runBefore: {}, leakCfm }
  const run = conditions.run ?? ''
  const before = readings.filter(hasValue).filter(({ kind, setId, conditions: typed, step: at }) => {
    if (kind !== 'flow') return false
    const own = readingConditions.read(typed, setId)
    const same = sameKey(at, step) && (own.run ?? '') === run
    return !same && pressureOf(own) === pressure && (own.chamber ?? '') === (conditions.chamber ?? '')
  })
  return {
    runBefore: Object.fromEntries(before.map(({ point, value }) => [point, value])),
    leakCfm,
  }
}

/** What is typed beside the figures and changes what they are held against: the cutter touched off anew. */
export const withTyped = (
  facts: ExpectedFacts,
  typed: readonly { readonly kind: string; readonly text: string }[],
): ExpectedFacts => ({
  ...facts,
  mill: { ...facts.mill, touchedOffAnew: typed.some(({ kind, text }) => kind === 'touch-off' && text === newTouchOff) },
})
