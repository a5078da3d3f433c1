import type { FlatDeckNow } from '../flat-deck/after-cut'
import type { MetalGone } from '../head-now/metal-gone'
import type { SeatReading } from '../head-now/seat-now'
import type { CutKind } from '../route/step-ids'
import type { CutCaution } from './cautions'

/** How the depth at the chamber's centroid is shared between the flat and the angle part. */
export type Split =
  | { readonly by: 'flat'; readonly flatIn: number }
  | { readonly by: 'angle'; readonly angleIn: number }
  | { readonly by: 'degrees'; readonly angleDeg: number }
  /** The flat part is worth the shop's margin: what a vendor leaves for the last cut in house. */
  | { readonly by: 'margin' }

export type HeadNow = {
  readonly tag: string
  /** One a chamber, from the marked end; a single nominal figure when nothing was measured. */
  readonly chambersCc: readonly number[]
  /** Thinnest corner now; null: not measured. */
  readonly thicknessIn: number | null
  /** Metal gone since new at the deepest, where that is on record. */
  readonly removedBeforeIn?: number | null
  /** The same at both edges, with how it is known; null: not known; left out: flat, by the figures above. */
  readonly metalGone?: MetalGone | null
  /** Thinnest corner at each edge; left out: the thinnest of all. */
  readonly edgeThicknessIn?: { readonly intake: number | null; readonly exhaust: number | null }
  /** How many chambers it has; left out: not known. */
  readonly chambers?: number
  /** Seats read on this visit before any of its cuts. */
  readonly seatReadings?: readonly SeatReading[]
  /** Of a flat-deck head: its valves and injectors as they were read before any cut. */
  readonly flatDeck?: FlatDeckNow
}

/** Land under the intake port; its place across from the shallow edge of the cut, as a share of the milled width. */
export type Land = {
  readonly newIn: number
  readonly leastIn: number
  /** Null: the record does not say where; an angle cut needs it. */
  readonly atShare: number | null
}

export type CutLimits = {
  readonly angleCautionDeg: number
  readonly angleLimitDeg: number
  readonly thicknessNewIn?: number | null
  /** Least thickness the shop allows; null: none on record. */
  readonly thicknessLeastIn: number | null
  /** Land under the intake port, new and least; null: not on record. */
  readonly land?: Land | null
  readonly classFlatOnly: boolean
  /** Held by the smallest chamber, finished. */
  readonly classMinCc: number | null
  /** Since new where that is known, else of this cut. */
  readonly classMaxCutIn: number | null
}

export type PlanInput = {
  readonly kind: CutKind
  /** Left out: the exhaust edge. */
  readonly deepEdge?: 'intake' | 'exhaust'
  readonly heads: readonly HeadNow[]
  /** The present volumes are nominal: from a record, not from a burette. */
  readonly presentNominal?: boolean
  readonly targetCc: number | null
  readonly toleranceCc: number
  /** What the seat work still to come will add; the cut aims below the target by it. */
  readonly seatWorkGivesCc: number
  /** Thou at the chamber's centroid for one cc; null: not known. */
  readonly thouPerCc: number | null
  /** The shop's own cuts stand behind the rate; left out: they do. */
  readonly rateProven?: boolean
  /** Opening's centre from the shallow edge, as a share of the milled width; null: not known. */
  readonly centroidShare: number | null
  readonly milledWidthIn: number | null
  /** For angle and flat; the other kinds have nothing to share. */
  readonly split: Split
  readonly marginCc: number
  /** Clean-up only. */
  readonly stopAtIn: number | null
  /** Cut until the largest chamber is at the target, then open the rest; else the mean goes to the target. */
  readonly equalise?: boolean
  readonly limits: CutLimits
  /** Valves in a flat face: cut to a thickness, and no cc; left out or null: heads with chambers. */
  readonly flatDeck?: { readonly wantedThicknessIn: number | null } | null
}

export type HeadAfter = {
  readonly tag: string
  readonly chambersAfterCutCc: readonly number[]
  readonly chambersFinishedCc: readonly number[]
  readonly thicknessLeftIn: number | null
}

/** A chamber that cutting alone leaves outside the tolerance; too small: `overCc` is negative. */
export type OutOfTolerance = {
  readonly tag: string
  /** From the marked end: 1 … n. */
  readonly chamber: number
  readonly finishedCc: number
  readonly overCc: number
}

export type PlanAnswer = {
  readonly kind: CutKind
  readonly flatIn: number
  readonly angleIn: number
  /** Null: needs the milled width. */
  readonly angleDeg: number | null
  readonly depthAtCentroidIn: number
  readonly deepestIn: number
  /** From each chamber; null: needs the rate. */
  readonly removesCc: number | null
  readonly presentMeanCc: number | null
  /** What the cut itself goes for: target less what the seat work adds; null: the plan has no target to reach. */
  readonly aimCc: number | null
  readonly afterCutCc: number | null
  readonly finishedCc: number | null
  readonly heads: readonly HeadAfter[]
  readonly outOfTolerance: readonly OutOfTolerance[]
  /** Which volume decides the depth, and what that leaves of the others. */
  readonly governing: string
  /** Since new, of the head that lost most; null: not known of every head. */
  readonly totalRemovedIn: number | null
  readonly cautions: readonly CutCaution[]
  /** Names of the fields that would fill in what is null here. */
  readonly needs: readonly string[]
}
