import type { ReadingKind } from '@/lib/core/readings/types'

/** An answer as the trail keeps it: for good, so the name of somebody who is not of the shop is left out. */
export const inTrail = (kind: ReadingKind, text: string): string =>
  kind === 'taken-by' && text !== '' ? 'name not kept here' : text
