import type { CutKind } from '../route/step-ids'

/**
 * What a plan version freezes as its results: all that follows from the cut, in the core's units. Null: not computable
 * with what was known, and `needs` says what would make it so.
 */
export type PlanRecord = {
  readonly kind: CutKind
  readonly flatIn: number
  readonly angleIn: number
  readonly angleDeg: number | null
  readonly deepEdge: 'intake' | 'exhaust'
  readonly deepestIn: number
  readonly depthAtCentroidIn: number
  readonly thouPerCc: number
  readonly rateWords: string
  /** The shop's own cuts stood behind the rate when the plan was kept; absent: they did not, or nobody asked. */
  readonly rateProven?: boolean
  readonly presentMeanCc: number | null
  /** True when the present cc came from a record or was asked, not from a burette. */
  readonly presentNominal: boolean
  readonly targetCc: number | null
  readonly predictedAfterCutCc: number | null
  readonly predictedFinishedCc: number | null
  readonly seatWorkGivesCc: number
  readonly intakeSideIn: number | null
  readonly intakeRailsIn: number | null
  readonly ptvLossIntakeIn: number | null
  readonly ptvLossExhaustIn: number | null
  readonly compressionBefore: number | null
  readonly compressionAfter: number | null
  readonly needs: readonly string[]
  readonly cautions: readonly string[]
}
