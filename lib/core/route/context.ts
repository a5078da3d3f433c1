import type { Column } from './cells'
import type { Why } from './codes'
import type { History } from './marks'
import type { CutKind, StepId } from './step-ids'
import type { RouteFacts } from './types'

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
  /** Why a step is needed; null when it is not. Flow and arrival steps have their own rules. */
  readonly need: (stepId: StepId) => Why | null
  /** Needed, or done already. */
  readonly onRoute: (stepId: StepId) => boolean
}
