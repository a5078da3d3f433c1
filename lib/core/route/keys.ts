import type { FlowOccurrence, StepId, StepKey } from './step-ids'

/** A step as the tables name it: a step id, or a flow run by its place in the job. */
export type StepRef = Exclude<StepId, 'flow'> | `flow-${FlowOccurrence}`

/** One text per step key, for looking up. */
export const keyText = ({ stepId, occurrence, orderId }: StepKey): string => `${stepId}|${occurrence}|${orderId ?? ''}`

export const sameKey = (a: StepKey, b: StepKey): boolean => keyText(a) === keyText(b)

/** The key of a step that does not recur by outside order. */
export function keyOf(ref: StepRef): StepKey {
  return ref.startsWith('flow-')
    ? { stepId: 'flow', occurrence: ref.slice('flow-'.length), orderId: null }
    : { stepId: ref as StepId, occurrence: '', orderId: null }
}

/** The key of a step, without the rest of it. */
export const keyIn = ({ stepId, occurrence, orderId }: StepKey): StepKey => ({ stepId, occurrence, orderId })

/** `keyText` of that key. */
export const textOf = (ref: StepRef): string => keyText(keyOf(ref))

/** What the tables call this step; arrival steps share one name over all orders. */
export const refOf = ({ stepId, occurrence }: StepKey): StepRef =>
  stepId === 'flow' ? `flow-${occurrence as FlowOccurrence}` : stepId
