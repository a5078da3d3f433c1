import { pointsOf } from '../readings/points'
import type { Column } from './cells'
import type { Why } from './codes'
import type { Context } from './context'
import { historyOf } from './history'
import type { History } from './marks'
import { needOf } from './needs'
import type { CutKind, StepId } from './step-ids'
import type { RouteFacts } from './types'

/** `plan` is the facts' own plan, or the one before it: what a plan change made needed is the difference. */
export function contextOf(original: RouteFacts, plan: RouteFacts['plan'], known?: History): Context {
  const facts = plan === original.plan ? original : { ...original, plan }
  const history = known ?? historyOf(facts)
  const cutKind = cutKindOf(facts)
  const cutIn = cutDepthIn(facts, cutKind)
  const needs = new Map<StepId, Why | null>()
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
      const known = needs.get(stepId)
      if (known !== undefined) return known
      const found = needOf(stepId, context)
      needs.set(stepId, found)
      return found
    },
    onRoute: (stepId) => context.need(stepId) !== null || history.markOf(`${stepId}||`).doneSeq !== null,
  }
  return context
}

/** Until there is a plan, an ordered cut stands in for it, so that the whole route can be seen at booking. */
function cutKindOf({ plan, ordered, flatDeck }: RouteFacts): CutKind {
  if (plan) return plan.kind
  // A flat-deck head is never cut at an angle, whatever was ordered before its form was known.
  const angle = ordered.includes('angle-cut') && !flatDeck
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
