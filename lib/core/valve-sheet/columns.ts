import { valveKinds, type ValveKind } from '../readings/valve-kinds'
import type { StepId } from '../route/step-ids'

/** What a cell of a column is held against as it is typed. */
export type HeldBy =
  | 'most' // the shop's limit, nothing over it
  | 'least' // the shop's limit, nothing under it
  | 'wanted' // the wanted figure, either way by the shop's tolerance
  | 'lift' // the valve's lift and the margin
  | 'nothing'

export type ValveColumn = {
  readonly kind: ValveKind
  /** The head of a narrow column; the unit stands under it. */
  readonly short: string
  /** Steps that read it. */
  readonly steps: readonly StepId[]
  readonly heldBy: HeldBy
}

const columns: Readonly<Record<ValveKind, Omit<ValveColumn, 'kind'>>> = {
  'guide-clearance': { short: 'Guide clearance', steps: ['guides'], heldBy: 'wanted' },
  'insert-press': { short: 'Insert press', steps: ['inserts'], heldBy: 'wanted' },
  'seat-angles': { short: 'Angles', steps: ['seat-work'], heldBy: 'nothing' },
  'seat-width': { short: 'Width', steps: ['seat-work'], heldBy: 'wanted' },
  runout: { short: 'Runout', steps: ['seat-work'], heldBy: 'most' },
  vacuum: { short: 'Vacuum', steps: ['seat-work'], heldBy: 'least' },
  sink: { short: 'Recession', steps: ['seat-work'], heldBy: 'wanted' },
  'stem-height': { short: 'Stem height', steps: ['seat-work'], heldBy: 'wanted' },
  'installed-height': { short: 'Installed height', steps: ['heights'], heldBy: 'wanted' },
  shims: { short: 'Shims', steps: ['heights', 'springs'], heldBy: 'nothing' },
  'retainer-to-seal': { short: 'Retainer to seal', steps: ['heights'], heldBy: 'lift' },
  'coil-bind': { short: 'Coil bind', steps: ['heights'], heldBy: 'wanted' },
  'seat-pressure': { short: 'Seat pressure', steps: ['springs'], heldBy: 'wanted' },
  'open-pressure': { short: 'Open pressure', steps: ['springs'], heldBy: 'wanted' },
}

/** The sheet's columns, in the order of the work. */
export const valveColumns: readonly ValveColumn[] = valveKinds.map((kind) => ({ kind, ...columns[kind] }))

/** The column of a kind. */
export const columnOf = (kind: ValveKind): ValveColumn => ({ kind, ...columns[kind] })
