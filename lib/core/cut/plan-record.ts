import type { SeatGround } from '../head-now/seat-now'
import type { FaceCut } from '../intake/face-cut'
import type { CutKind } from '../route/step-ids'
import type { CutCaution } from './cautions'

/** One port's nearest seat: what the cut leaves at its sealing line, in inches; below zero: cut through. */
export type SeatOnRecord = {
  readonly port: 'intake' | 'exhaust'
  readonly tag: string
  readonly marginIn: number
  readonly ground: SeatGround
}

/** One flat-deck head: lengths in inches, before and after the cut and the seat work planned with it. */
export type FlatDeckHeadRecord = {
  readonly tag: string
  readonly thicknessNowIn: number | null
  readonly thicknessLeftIn: number | null
  readonly valves: readonly { readonly valve: string; readonly beforeIn: number; readonly afterIn: number }[]
  readonly injectors: readonly { readonly chamber: string; readonly beforeIn: number; readonly afterIn: number }[]
}

export type FlatDeckRecord = {
  /** Null: a clean-up. */
  readonly wantedThicknessIn: number | null
  readonly thicknessLeastIn: number | null
  readonly heads: readonly FlatDeckHeadRecord[]
  /** Valve pockets over one piston, or what was read by burette; null: not known. */
  readonly beforeCc: number | null
  readonly afterCc: number | null
}

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
  /** At the two ends of the face, and what is left as a gap; absent or null: no wedge, or the face's height is not known. */
  readonly intakeFace?: FaceCut | null
  /** How much less a leaning chamber wall lets the cut take, in cc; below zero: more. Absent: no draft on record. */
  readonly wallDraft?: { readonly deg: number; readonly lessCc: number } | null
  /** Sealing lines over the new deck, and what each depth stands on. */
  readonly seats?: readonly SeatOnRecord[]
  /** Of flat-deck heads; absent or null: heads with chambers. */
  readonly flatDeck?: FlatDeckRecord | null
  readonly ptvLossIntakeIn: number | null
  readonly ptvLossExhaustIn: number | null
  readonly compressionBefore: number | null
  readonly compressionAfter: number | null
  readonly needs: readonly string[]
  readonly cautions: readonly CutCaution[]
}
