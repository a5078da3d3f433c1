import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Figure, ShopBlock } from '@/lib/core/spec/spec-sheet'

export type OutsideSheetHead = {
  readonly tag: string
  readonly qrText: string
  readonly casting: string
  readonly marks: string
  /** What to do, a line each: "Angle cut: 0.063 in at the exhaust edge, nothing at the intake edge". */
  readonly work: readonly string[]
  /** Set huge: depth at each edge. */
  readonly figures: readonly Figure[]
  /** "Take the metal off the exhaust edge: it is the deep one."; '' without an angle part. */
  readonly edge: string
  /** What was wrong with work that is done again: only that is to be put right; '' for new work. */
  readonly redo: string
  /** Thickness at the corners now, and as wanted after the cut, in inches. */
  readonly corners: readonly { readonly corner: string; readonly nowIn: string; readonly wantedIn: string }[]
  /** Tolerance, straightness and finish wanted, and which end is the marked one. */
  readonly wanted: readonly string[]
  /** "Cut exactly these figures, no more. We take another 0.0080 in flat here afterwards."; '' without an angle cut. */
  readonly leave: string
  readonly drawing: HeadDrawing
  /** Valves, studs, what came with it. */
  readonly withIt: readonly string[]
}

export type OutsideSheetData = {
  readonly language: string
  readonly shop: ShopBlock
  readonly orderNumber: string
  /** "Rework of O-0007, at your cost."; left out for an order of new work. */
  readonly redo?: string
  readonly vendor: ShopBlock
  readonly sentOn: string
  readonly promised: string
  readonly contact: string
  readonly heads: readonly OutsideSheetHead[]
  /** What we check when it comes back. */
  readonly checks: readonly string[]
  readonly notes: string
  readonly cautions: readonly string[]
  readonly addressWarning: string
}
