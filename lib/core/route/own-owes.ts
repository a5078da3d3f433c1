import type { ReadingKind } from '../readings/types'

/** What a step added by the shop may ask for: readings that mean the same at any step. */
export const ownOwes = [
  'work-note',
  'verdict',
  'pressure',
  'crack',
  'leak-test',
  'thickness',
  'straightness',
  'cc',
  'valves-used',
  'plug-used',
  'runout',
  'sink',
  'stem-height',
  'installed-height',
  'spring-pressure',
] as const satisfies readonly ReadingKind[]
