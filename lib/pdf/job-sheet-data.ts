import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Figure, ShopBlock } from '@/lib/core/spec/spec-sheet'
import type { StepState } from '@/lib/core/route/types'
import type { Graduation } from '@/lib/drawing/graduations'

export type JobSheetPoint = {
  /** What the points beside it have in common: "intake"; '' when nothing. */
  readonly group: string
  /** Short: "1", "end 2", "0.300 in"; '' for a single answer. */
  readonly label: string
  /** What was already read. */
  readonly value: string | null
}

/** A reading owed: one blank a point, with its unit. */
export type JobSheetOwed = {
  readonly label: string
  /** "cc", "in"; '' for words. */
  readonly unit: string
  readonly points: readonly JobSheetPoint[]
  /** Answers to tick instead of writing; empty when it is written. */
  readonly choices: readonly string[]
}

/** Readings of each valve: a row a valve, a column a reading; null: still to be written. */
export type JobSheetValves = {
  readonly columns: readonly { readonly label: string; readonly unit: string }[]
  readonly rows: readonly { readonly name: string; readonly cells: readonly (string | null)[] }[]
}

export type JobSheetStep = {
  readonly label: string
  readonly station: string
  readonly state: StepState
  /** "at Northgate Grinding, order 26-014"; '' when in house. */
  readonly outside: string
  /** Why it must be done again, why it was waived, what it waits for; '' otherwise. */
  readonly note: string
  /** The figures this bench needs: "Slot, holes 1, 3: 12.5 thou, at the top, toward the intake edge"; '' when none. */
  readonly wanted: string
  /** What is read at each valve; absent: nothing is. */
  readonly valves?: JobSheetValves
  readonly owes: readonly JobSheetOwed[]
}

export type JobSheetHead = {
  readonly tag: string
  /** Of this visit's record: of two sheets the higher one is the newer. */
  readonly revision: number
  /** The shop's address and the tag. */
  readonly qrText: string
  readonly casting: string
  readonly marks: string
  readonly side: string
  readonly place: string
  readonly pairTags: readonly string[]
  readonly cameWith: string
  /** The customer's order for this head in words, a line each. */
  readonly ordered: readonly string[]
  /** Why nobody works on it, a line each: nothing else is read first, and nothing below it may look live. */
  readonly stop: readonly string[]
  /** Parts that a step waits for, a line each. */
  readonly waiting: readonly string[]
  /** "Angle cut and flat cut", "No cut". */
  readonly planTitle: string
  /** Set huge: how deep to stop, depth at each edge, target cc. */
  readonly planFigures: readonly Figure[]
  readonly planNotes: readonly string[]
  readonly drawing: HeadDrawing
  readonly graduations: readonly Graduation[]
  /** The steps of the graduations, in their order; what is not needed is left blank. */
  readonly steps: readonly JobSheetStep[]
  /** Extra work seen: what, and how it was answered. */
  readonly findings: readonly string[]
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
  readonly notes: string
  /** Said while the shop's address works on this machine only; '' otherwise. */
  readonly addressWarning: string
  readonly heads: readonly JobSheetHead[]
}
