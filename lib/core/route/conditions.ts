import type { PastWhat, Why } from './codes'
import type { Context } from './context'
import { pastMaker } from '../flat-deck/past-maker'
import { machined } from './order'
import { brokenThrough, flatLeftIn } from './outside-cuts'
import type { StepId } from './step-ids'
import { mean } from '../mean'

/** Why a step is needed; null when its condition does not hold. */
export type Condition = (context: Context) => Why | null

const past = (what: PastWhat, valueIn: number, limitIn: number): Why | null =>
  valueIn > limitIn ? { code: 'past-limit', what, valueIn, limitIn } : null

/** Those of these steps that are on the route; null for none. */
const afterAny = ({ onRoute }: Context, among: readonly StepId[]): Why | null => {
  const steps = among.filter(onRoute)
  return steps.length === 0 ? null : { code: 'after-work', steps }
}

const valvesRenewed = ({ facts }: Context): Why | null =>
  facts.ordered.includes('valves') || facts.events.some((event) => event.kind === 'valve-changed')
    ? { code: 'valves-renewed' }
    : null

export const usedHead: Condition = ({ facts }) => (facts.used ? { code: 'used-head' } : null)

export const pressureDoubt: Condition = (context) => {
  if (context.facts.overheated) return { code: 'overheated' }
  if (brokenThrough(context.facts).length > 0) return { code: 'break-through' }
  return afterAny(context, ['weld', 'inserts', 'guides'])
}

export const chambersMatter: Condition = ({ facts }) => {
  if (facts.targetCc !== null) return { code: 'target' }
  if (facts.classMinCc !== null) return { code: 'class-limit' }
  return facts.hasEngineData ? { code: 'engine-known' } : null
}

/** Mean of the chambers as they came, over the target by more than the tolerance the wrong way: cutting cannot help. */
export const chamberTooSmall: Condition = ({ facts }) => {
  const measured = facts.readings.filter((reading) => reading.kind === 'cc' && reading.step.stepId === 'chambers')
  const values = measured.map((reading) => reading.value).filter((value) => value !== null)
  if (facts.targetCc === null || values.length === 0) return null
  const meanCc = mean(values)
  return facts.targetCc - meanCc > facts.settings.ccToleranceCc ? { code: 'chamber-too-small' } : null
}

export const flatPartLeft: Condition = ({ facts, cutKind }) => {
  if (facts.plan === null) return facts.ordered.includes('flat-cut') ? { code: 'flat-ordered' } : null
  if (cutKind === 'clean-up' || cutKind === 'flat') return { code: 'flat-part' }
  const leftIn = flatLeftIn(facts)
  return leftIn > 0 ? { code: 'flat-left', leftIn } : null
}

/** While the figure cannot be computed the depth of the cut stands in: a 90° V moves its ports by about the cut. */
export const intakeMoves: Condition = ({ facts, column, cutIn }) => {
  const { manifoldSpansHeads: spans, plan, settings } = facts
  if (spans === false) return null
  if (column === 'angle') return { code: 'angle-manifold', isKnown: spans === true }
  if (!spans) return null
  return past('intake-side', plan?.intakeSideIn ?? cutIn, settings.intakeLimitIn)
}

export const boltReachDoubt: Condition = ({ facts, goneIn }) =>
  past('metal-removed', goneIn, facts.settings.boltReachLimitIn)
export const dowelDoubt: Condition = ({ facts, goneIn }) => past('metal-removed', goneIn, facts.settings.dowelLimitIn)
export const rockerMoves: Condition = ({ facts, cutIn }) => past('cut', cutIn, facts.settings.rockerLimitIn)
export const deepCleanUp: Condition = ({ facts, cutIn }) => past('clean-up', cutIn, facts.settings.cleanUpSeatLimitIn)

export const pistonNear: Condition = ({ facts, cutIn }) => {
  const { plan, settings, remainingPtvIn } = facts
  const lossIn = Math.max(cutIn, plan?.ptvLossIn ?? 0)
  const byLoss = past('ptv-loss', lossIn, settings.ptvLossLimitIn)
  if (byLoss || remainingPtvIn === null) return byLoss
  const leftIn = remainingPtvIn - (plan?.ptvLossIn ?? cutIn)
  const limitIn = settings.ptvRemainingLimitIn
  return leftIn < limitIn ? { code: 'ptv-left', leftIn, limitIn } : null
}

export const camInHead: Condition = ({ facts }) => (facts.camInHead ? { code: 'cam-in-head' } : null)

export const seatCheckFails: Condition = ({ facts }) =>
  failedSeatChecks(facts).length > 0 ? { code: 'seat-check-failed' } : null

export const failedSeatChecks = (facts: Context['facts']): Context['facts']['readings'] =>
  facts.readings.filter(
    ({ step, kind, text, point, value }) =>
      step.stepId === 'seat-after' &&
      (isTooProud(facts, { kind, point, value }) ||
        (kind === 'leak-test' && text === 'leaks') ||
        (kind === 'top-cut' && text === 'gone') ||
        (kind === 'insert-marks' && text === 'seat')),
  )

/** A valve of a flat-deck head that the cut left too near the deck: its seat is cut deeper. */
const isTooProud = ({ flatDeck }: Context['facts'], reading: Parameters<typeof pastMaker>[0]): boolean =>
  reading.kind === 'recession' && !!flatDeck && pastMaker(reading, flatDeck.limits)?.side === 'under'

export const edgeLeft: Condition = ({ facts }) =>
  facts.readings.some((reading) => reading.kind === 'seat-edge' && reading.text === 'edge')
    ? { code: 'edge-left' }
    : null

export const heightsChange: Condition = (context) =>
  afterAny(context, ['seat-work', 'guides', 'springs']) ?? valvesRenewed(context)

/** Something that we measured, or must answer for, is no longer what it was. A clean-up cuts what was measured. */
export const measuredChanges: Condition = (context) => {
  const { facts, onRoute } = context
  const answerFor = facts.targetCc !== null || facts.classMinCc !== null || onRoute('chambers') || onRoute('thickness')
  if (!answerFor) return null
  if (context.column === 'cleanUp') return { code: 'clean-up-thickness' }
  if (facts.source === 'bought-cut') return { code: 'cut-by-maker' }
  return (
    afterAny(context, ['seat-work', 'open-chamber', 'port', 'weld', 'inserts', 'guides', 'straighten']) ??
    valvesRenewed(context)
  )
}

export const machining: Condition = (context) => {
  const steps: StepId[] = [
    'port',
    'open-chamber',
    'seat-work',
    'guides',
    'inserts',
    'weld',
    'straighten',
    'steam-holes',
    'groove',
    'blend',
    'intake',
    'bolt-seats',
  ]
  const own = context.facts.settings.rules.own.filter((step) => step.machining).map(({ id }) => id)
  return [...steps, ...own].some(context.onRoute) ? { code: 'after-machining' } : null
}

/** Chips and oil falsify cc, flow and seats: between machining and measuring the head is rinsed. */
export const rinseMatters: Condition = (context) => {
  const own = context.facts.settings.rules.own.filter((step) => step.machining).map(({ id }) => id)
  const dirty = [...machined, ...own].some((ref) => context.onRoute(ref as StepId))
  return dirty ? { code: 'after-machining' } : null
}

export const assembled: Condition = ({ facts }) => {
  if (facts.cameAssembled) return { code: 'came-assembled' }
  return facts.ordered.includes('assemble') ? { code: 'assembly-ordered' } : null
}
