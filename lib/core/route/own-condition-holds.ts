import type { Context } from './context'
import type { OwnCondition } from './own-conditions'
import type { StepId } from './step-ids'

/** Whether the condition holds; a figure must pass the limit, in inches, which is 0 where there is none. */
export function ownConditionHolds(condition: OwnCondition, limitIn: number, context: Context): boolean {
  const { facts, cutIn, goneIn } = context
  switch (condition) {
    case 'used-head':
      return facts.used
    case 'overheated':
      return facts.overheated
    case 'came-assembled':
      return facts.cameAssembled
    case 'target-given':
      return facts.targetCc !== null
    case 'cam-in-head':
      return facts.camInHead === true
    case 'one-manifold':
      return facts.manifoldSpansHeads === true
    case 'cut-deeper':
      return cutIn > limitIn
    case 'gone-more':
      return goneIn > limitIn
    case 'after-seat-work':
      return onAny(context, ['seat-work'])
    case 'after-chamber-work':
      return onAny(context, ['port', 'open-chamber', 'blend'])
    case 'after-repair':
      return onAny(context, ['weld', 'inserts', 'guides'])
  }
}

const onAny = ({ onRoute }: Context, steps: readonly StepId[]): boolean => steps.some(onRoute)
