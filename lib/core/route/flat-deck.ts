import type { Why } from './codes'
import type { Context } from './context'
import type { StepId } from './step-ids'

/** Work in a chamber that such a head does not have, and a cut that would tilt its valves. */
const never: ReadonlySet<StepId> = new Set<StepId>(['chambers', 'open-chamber', 'blend', 'angle-cut'])
/** Any cut, and any work at the valves, changes how deep the valves lie: read before and after. */
const valveWork: readonly StepId[] = ['seat-work', 'inserts', 'guides']
const always: readonly StepId[] = ['seat-before', 'seat-after', 'finished']

/**
 * Whether a flat-deck head needs a step, where its form decides it: a reason; null for never; undefined where the table
 * decides as for any head.
 */
export function flatDeckNeed(stepId: StepId, context: Context): Why | null | undefined {
  if (never.has(stepId)) return null
  if (!always.includes(stepId)) return undefined
  if (context.column !== 'none') return { code: 'flat-deck' }
  if (stepId === 'seat-after') return undefined
  return valveWork.some((work) => context.onRoute(work)) ? { code: 'flat-deck' } : undefined
}
