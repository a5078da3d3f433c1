import type { Context } from './context'
import { orderWords } from './outside-cuts'
import { columns } from './cells'
import { tableOf } from './table'
import { cutWords } from './words'
import type { FlowOccurrence, StepId } from './step-ids'

const isCut = (stepId: StepId): boolean => stepId === 'angle-cut' || stepId === 'flat-cut'

/**
 * Why a step is needed, in words; '' when it is not. What was ordered is always on the route, except the cuts, which the
 * plan alone decides; what an outside order has in its scope is on it too, so that it can be checked on its return.
 */
export function needOf(stepId: StepId, context: Context): string {
  if (stepId === 'flow' || stepId === 'arrival-count' || stepId === 'arrival-figures') return ''
  const { facts, column, cutKind } = context
  if (!isCut(stepId) && facts.ordered.includes(stepId)) return 'ordered'
  const asked = facts.orders.filter((candidate) => candidate.scope.includes(stepId))
  const order = asked.findLast((candidate) => !candidate.rejected) ?? asked.at(-1)
  if (order) return `sent out to ${orderWords(order)}`
  if (stepId === 'chambers' && facts.source === 'bought-cut') return ''
  const row = tableOf(facts.settings.rules).rowOf(stepId)
  const cell = row.cells[columns.indexOf(column)]
  if (cell === '●') return column === 'none' || row.cells[0] === '●' ? 'every head' : cutWords[cutKind]
  return cell === '◐' ? (row.when?.(context) ?? '') : ''
}

export const flowNeed = (occurrence: FlowOccurrence, { facts }: Context): string =>
  facts.ordered.includes(`flow-${occurrence}`) ? 'ordered' : ''
