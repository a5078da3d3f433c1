import type { Why } from './codes'
import type { Context } from './context'
import { orderName } from './outside-cuts'
import { columns } from './cells'
import { flatDeckNeed } from './flat-deck'
import { tableOf } from './table'
import type { FlowOccurrence, StepId } from './step-ids'

const isCut = (stepId: StepId): boolean => stepId === 'angle-cut' || stepId === 'flat-cut'

/**
 * Why a step is needed; null when it is not. What was ordered is always on the route, except the cuts, which the
 * plan alone decides; what an outside order has in its scope is on it too, so that it can be checked on its return.
 */
export function needOf(stepId: StepId, context: Context): Why | null {
  if (stepId === 'flow' || stepId === 'arrival-count' || stepId === 'arrival-figures') return null
  const { facts, column, cutKind } = context
  if (!isCut(stepId) && facts.ordered.includes(stepId)) return { code: 'ordered' }
  const asked = facts.orders.filter((candidate) => candidate.scope.includes(stepId))
  const order = asked.findLast((candidate) => !candidate.rejected) ?? asked.at(-1)
  if (order) return { code: 'sent-out', order: orderName(order) }
  if (stepId === 'chambers' && facts.source === 'bought-cut') return null
  const ofForm = facts.flatDeck ? flatDeckNeed(stepId, context) : undefined
  if (ofForm !== undefined) return ofForm
  const row = tableOf(facts.settings.rules).rowOf(stepId)
  const cell = row.cells[columns.indexOf(column)]
  if (cell === '●')
    return column === 'none' || row.cells[0] === '●' ? { code: 'every-head' } : { code: 'cut', kind: cutKind }
  return cell === '◐' ? (row.when?.(context) ?? null) : null
}

export const flowNeed = (occurrence: FlowOccurrence, { facts }: Context): Why | null =>
  facts.ordered.includes(`flow-${occurrence}`) ? { code: 'ordered' } : null
