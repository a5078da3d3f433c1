import type { ReadingKind } from './specs'

/** Kinds that are read at each valve. */
export const valveKinds = [
  'guide-clearance',
  'insert-press',
  'seat-angles',
  'seat-width',
  'runout',
  'vacuum',
  'sink',
  'stem-height',
  'installed-height',
  'shims',
  'retainer-to-seal',
  'coil-bind',
  'seat-pressure',
  'open-pressure',
] as const satisfies readonly ReadingKind[]
export type ValveKind = (typeof valveKinds)[number]

export const isValveKind = (kind: ReadingKind): kind is ValveKind => valveKinds.some((one) => one === kind)
