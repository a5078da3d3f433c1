import type { StepState } from '@/lib/core/route/types'

/** One step of a route, as the head's scale draws it. */
export type Graduation = {
  readonly label: string
  readonly state: StepState
  /** A reading is owed at it: the graduation is long. */
  readonly owesReading: boolean
  /** Done by a vendor: hangs below the edge. */
  readonly outside: boolean
  /** An open hold stands here: a clamp across the scale. */
  readonly held: boolean
}
