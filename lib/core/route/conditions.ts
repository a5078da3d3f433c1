import type { Context } from './context'
import { brokenThrough, flatLeftIn } from './outside-cuts'
import { listed } from './words'
import type { StepId } from './step-ids'
import { mean } from '../mean'

/** Why a step is needed, in words; '' when its condition does not hold. */
export type Condition = (context: Context) => string

const formatInches = (inches: number): string => `${inches.toFixed(3)} in`
const past = (what: string, inches: number, limitIn: number): string =>
  inches > limitIn ? `${what} ${formatInches(inches)} is past the shop’s limit of ${formatInches(limitIn)}` : ''

const workNames: Partial<Readonly<Record<StepId, string>>> = {
  'seat-work': 'seat work',
  guides: 'guide work',
  inserts: 'insert work',
  weld: 'welding',
  straighten: 'straightening',
  port: 'port work',
  'open-chamber': 'chamber work',
  springs: 'springs',
}

/** Those of these steps that are on the route, in words; '' for none. */
const afterAny = ({ onRoute }: Context, steps: readonly StepId[]): string => {
  const names = steps.filter(onRoute).map((step) => workNames[step] ?? 'machining')
  return names.length === 0 ? '' : `after ${listed([...new Set(names)])}`
}

const valvesRenewed = ({ facts }: Context): string =>
  facts.ordered.includes('valves') || facts.events.some((event) => event.kind === 'valve-changed')
    ? 'valves renewed'
    : ''

export const usedHead: Condition = ({ facts }) => (facts.used ? 'a used head' : '')

export const pressureDoubt: Condition = (context) => {
  if (context.facts.overheated) return 'it was overheated'
  if (brokenThrough(context.facts).length > 0) return 'the cutter may have broken through'
  return afterAny(context, ['weld', 'inserts', 'guides'])
}

export const chambersMatter: Condition = ({ facts }) => {
  if (facts.targetCc !== null) return 'a target was given'
  if (facts.classMinCc !== null) return 'a class limit was given'
  return facts.hasEngineData ? 'the engine is known' : ''
}

/** Mean of the chambers as they came, over the target by more than the tolerance the wrong way: cutting cannot help. */
export const chamberTooSmall: Condition = ({ facts }) => {
  const measured = facts.readings.filter((reading) => reading.kind === 'cc' && reading.step.stepId === 'chambers')
  const values = measured.map((reading) => reading.value).filter((value) => value !== null)
  if (facts.targetCc === null || values.length === 0) return ''
  const meanCc = mean(values)
  return facts.targetCc - meanCc > facts.settings.ccToleranceCc ? 'the target is larger than the chamber' : ''
}

export const flatPartLeft: Condition = ({ facts, cutKind }) => {
  if (facts.plan === null) return facts.ordered.includes('flat-cut') ? 'a flat cut is ordered' : ''
  if (cutKind === 'clean-up' || cutKind === 'flat') return 'flat cut'
  const leftIn = flatLeftIn(facts)
  return leftIn > 0 ? `${formatInches(leftIn)} of the flat part is left for us` : ''
}

/** While the figure cannot be computed the depth of the cut stands in: a 90° V moves its ports by about the cut. */
export const intakeMoves: Condition = ({ facts, column, cutIn }) => {
  const { manifoldSpansHeads: spans, plan, settings } = facts
  if (spans === false) return ''
  if (column === 'angle')
    return spans ? 'an angle cut under one manifold' : 'an angle cut; not known whether one manifold spans the heads'
  if (!spans) return ''
  return past('the intake side moves by', plan?.intakeSideIn ?? cutIn, settings.intakeLimitIn)
}

export const boltReachDoubt: Condition = ({ facts, goneIn }) =>
  past('metal gone:', goneIn, facts.settings.boltReachLimitIn)
export const dowelDoubt: Condition = ({ facts, goneIn }) => past('metal gone:', goneIn, facts.settings.dowelLimitIn)
export const rockerMoves: Condition = ({ facts, cutIn }) => past('the cut of', cutIn, facts.settings.rockerLimitIn)
export const deepCleanUp: Condition = ({ facts, cutIn }) =>
  past('a clean-up of', cutIn, facts.settings.cleanUpSeatLimitIn)

export const pistonNear: Condition = ({ facts, cutIn }) => {
  const { plan, settings, remainingPtvIn } = facts
  const lossIn = Math.max(cutIn, plan?.ptvLossIn ?? 0)
  const byLoss = past('the loss of', lossIn, settings.ptvLossLimitIn)
  if (byLoss || remainingPtvIn === null) return byLoss
  const leftIn = remainingPtvIn - (plan?.ptvLossIn ?? cutIn)
  const leastIn = settings.ptvRemainingLimitIn
  return leftIn < leastIn
    ? `${formatInches(leftIn)} of piston-to-valve clearance is left (limit ${formatInches(leastIn)})`
    : ''
}

export const camInHead: Condition = ({ facts }) => (facts.camInHead ? 'the cam is in the head' : '')

export const seatCheckFails: Condition = ({ facts }) => {
  const failed = failedSeatChecks(facts)
  return failed.length > 0 ? 'the seat check failed' : ''
}

export const failedSeatChecks = (facts: Context['facts']): Context['facts']['readings'] =>
  facts.readings.filter(
    ({ step, kind, text }) =>
      step.stepId === 'seat-after' &&
      ((kind === 'leak-test' && text === 'leaks') ||
        (kind === 'top-cut' && text === 'gone') ||
        (kind === 'insert-marks' && text === 'seat')),
  )

export const edgeLeft: Condition = ({ facts }) =>
  facts.readings.some((reading) => reading.kind === 'seat-edge' && reading.text === 'edge')
    ? 'seat work left an edge'
    : ''

export const heightsChange: Condition = (context) =>
  afterAny(context, ['seat-work', 'guides', 'springs']) || valvesRenewed(context)

/** Something that we measured, or must answer for, is no longer what it was. A clean-up cuts what was measured. */
export const measuredChanges: Condition = (context) => {
  const { facts, onRoute } = context
  const answerFor = facts.targetCc !== null || facts.classMinCc !== null || onRoute('chambers') || onRoute('thickness')
  if (!answerFor) return ''
  if (context.column === 'cleanUp') return 'the clean-up changes the thickness'
  if (facts.source === 'bought-cut') return 'cut by its maker, not measured yet'
  return (
    afterAny(context, ['seat-work', 'open-chamber', 'port', 'weld', 'inserts', 'guides', 'straighten']) ||
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
  return [...steps, ...own].some(context.onRoute) ? 'after machining' : ''
}

export const assembled: Condition = ({ facts }) => {
  if (facts.cameAssembled) return 'it came assembled'
  return facts.ordered.includes('assemble') ? 'assembly is ordered' : ''
}
