import { pointsOf } from '../readings/points'
import { historyOf, type History } from './history'
import { needOf } from './needs'
import type { Column } from './steps'
import type { CutKind, RouteFacts, StepId } from './types'

/** What the conditions of the step table look at. */
export type Context = {
  readonly facts: RouteFacts
  readonly history: History
  readonly column: Column
  readonly cutKind: CutKind
  /** Deck metal that goes at the deepest on this visit, in inches; for a clean-up, what was cut once that is known. */
  readonly cutIn: number
  /** The same and all that went before, since new, in inches; this visit's alone while the new thickness is unknown. */
  readonly goneIn: number
  /** Lifts that were flowed on this visit, so that the next run can be held against them; else the customary grid. */
  readonly liftPoints: () => readonly string[]
  /** Why a step is needed; '' when it is not. Flow and arrival steps have their own rules. */
  readonly need: (stepId: StepId) => string
  /** Needed, or done already. */
  readonly onRoute: (stepId: StepId) => boolean
}

/** `plan` is the facts' own plan, or the one before it: what a plan change made needed is the difference. */
export function contextOf(original: RouteFacts, plan: RouteFacts['plan'], known?: History): Context {
  const facts = plan === original.plan ? original : { ...original, plan }
  const history = known ?? historyOf(facts)
  const cutKind = cutKindOf(facts)
  const cutIn = cutDepthIn(facts, cutKind)
  const needs = new Map<StepId, string>()
  let lifts: readonly string[] | null = null
  const context: Context = {
    facts,
    history,
    column: columnOf(cutKind, history),
    cutKind,
    cutIn,
    goneIn: goneIn(facts, cutIn),
    liftPoints: () => (lifts ??= liftPointsOf(facts.readings)),
    need: (stepId) => {
      const found = needs.get(stepId) ?? needOf(stepId, context)
      needs.set(stepId, found)
      return found
    },
    onRoute: (stepId) => context.need(stepId) !== '' || history.markOf(`${stepId}||`).doneSeq !== null,
  }
  return context
}

/** Until there is a plan, an ordered cut stands in for it, so that the whole route can be seen at booking. */
function cutKindOf({ plan, ordered }: RouteFacts): CutKind {
  if (plan) return plan.kind
  const angle = ordered.includes('angle-cut')
  const flat = ordered.includes('flat-cut')
  if (angle) return flat ? 'angle-flat' : 'angle'
  return flat ? 'flat' : 'none'
}

/** Metal that is off does not come back: a new plan cannot take a head out of the column of a cut that was made. */
function columnOf(kind: CutKind, history: History): Column {
  if (kind === 'angle' || kind === 'angle-flat' || history.angleMade) return 'angle'
  if (kind === 'flat') return 'flat'
  if (kind === 'clean-up') return 'cleanUp'
  return history.flatMade ? 'flat' : 'none'
}

function cutDepthIn({ plan, readings }: RouteFacts, kind: CutKind): number {
  if (!plan) return 0
  if (kind !== 'clean-up') return plan.deepestIn
  const depths = readings.filter((reading) => reading.kind === 'cut-depth' && reading.step.stepId === 'flat-cut')
  return depths.findLast((reading) => reading.value !== null)?.value ?? plan.deepestIn
}

function goneIn({ plan }: RouteFacts, cutIn: number): number {
  if (!plan || plan.totalRemovedIn === null) return cutIn
  return plan.totalRemovedIn - plan.deepestIn + cutIn
}

function liftPointsOf(readings: RouteFacts['readings']): readonly string[] {
  const flowed = new Set(readings.filter((reading) => reading.kind === 'flow').map((reading) => reading.point))
  const lifts = new Set([...flowed].map((point) => Number(point.split('@')[1])).filter((liftIn) => liftIn > 0))
  const liftsIn = [...lifts].sort((a, b) => a - b)
  return pointsOf('flow', liftsIn.length > 0 ? { chambers: 0, liftsIn } : { chambers: 0 })
}
