import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Figure, ShopBlock } from '@/lib/core/spec/spec-sheet'
import type { StepState } from '@/lib/core/route/types'
import type { Graduation } from '@/lib/drawing/graduations'

/** A reading owed: one blank a point, with its unit; `value` is what was already read. */
export type JobSheetOwed = {
  readonly label: string
  /** "cc", "in"; '' for words. */
  readonly unit: string
  readonly points: readonly { readonly label: string; readonly value: string | null }[]
}

export type JobSheetStep = {
  readonly label: string
  readonly station: string
  readonly state: StepState
  /** "at Northgate Grinding, order 26-014"; '' when in house. */
  readonly outside: string
  /** Why it must be done again, why it was waived, what it waits for; '' otherwise. */
  readonly note: string
  readonly owes: readonly JobSheetOwed[]
}

export type JobSheetHead = {
  readonly tag: string
  /** The shop's address and the tag. */
  readonly qrText: string
  readonly casting: string
  readonly marks: string
  readonly side: string
  readonly place: string
  readonly pairTags: readonly string[]
  readonly cameWith: string
  /** "Angle cut and flat cut", "No cut". */
  readonly planTitle: string
  /** Set huge: depth at each edge, target cc. */
  readonly planFigures: readonly Figure[]
  readonly planNotes: readonly string[]
  readonly drawing: HeadDrawing
  readonly graduations: readonly Graduation[]
  readonly steps: readonly JobSheetStep[]
  readonly cautions: readonly string[]
  /** What the customer said no to: it is not to be done. */
  readonly declined: readonly string[]
  readonly waivers: readonly string[]
}

export type JobSheetData = {
  readonly language: string
  readonly shop: ShopBlock
  readonly jobNumber: string
  readonly customer: string
  readonly phone: string
  readonly promised: string
  /** '' when ordinary. */
  readonly urgency: string
  readonly engine: string
  /** The customer's order in words, a line each. */
  readonly ordered: readonly string[]
  readonly notes: string
  /** Said while the shop's address works on this machine only; '' otherwise. */
  readonly addressWarning: string
  readonly heads: readonly JobSheetHead[]
}
