import { pointLabel } from '../readings/points'
import { readingSpecs } from '../readings/specs'
import type { ReadingKind } from '../readings/types'
import { isValveKind } from '../readings/valve-kinds'
import type { CutKind } from './step-ids'

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? ''
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
export const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

export const cutWords: Readonly<Record<CutKind, string>> = {
  none: 'no cut',
  'clean-up': 'clean-up cut',
  flat: 'flat cut',
  angle: 'angle cut',
  'angle-flat': 'angle and flat cut',
}

/** What a reading is called in a sentence, where its label is a question or too long. */
const nouns: Partial<Readonly<Record<ReadingKind, string>>> = {
  cc: 'cc',
  'came-with': 'note of what came with it',
  'removed-before': 'depth removed before this job',
  'seat-depth': 'seat depth',
  recession: 'depth below the deck',
  'deck-cc': 'volume in the deck',
  'edge-depth': 'depth',
  'face-depth': 'depth off the intake face',
  'cut-depth': 'total depth from touch-off',
  'intake-choice': 'choice for the intake side',
  'break-through': 'answer about breaking through',
  'bolt-squared': 'answer about square bolt seats',
  'bolt-passes': 'answer about the bolts passing',
  'bolt-slotted': 'note of slotted holes',
  dowels: 'answer about the dowels',
  runout: 'runout',
  sink: 'valve recession',
  'vendor-marks': 'note of the vendor’s marks',
  'parts-returned': 'note of parts and cores returned',
  'taken-by': 'note of who took it',
  'seat-angles': 'seat angles',
  'installed-height': 'installed height',
  'retainer-to-seal': 'retainer to seal clearance',
  'coil-bind': 'coil bind height',
  'seat-edge': 'answer about an edge to the chamber',
  side: 'bank or side',
  'finish-how': 'answer to how the finish was judged',
  'trial-fit': 'answer about manifold, headers and covers',
  'insert-marks': 'answer about marks on the inserts',
  'top-cut': 'answer about the top cut',
  ptv: 'piston-to-valve answer',
}

export const readingNoun = (kind: ReadingKind): string => nouns[kind] ?? lower(readingSpecs[kind].label)

/** "chamber 3 has no cc yet"; "no condition yet" where there is one answer. */
export function pointOwed(kind: ReadingKind, point: string): string {
  const place = pointLabel(point)
  return place === '' ? `no ${readingNoun(kind)} yet` : `${place} has no ${readingNoun(kind)} yet`
}

/** So many valves are still named one by one. */
const mostNamed = 4

/** "chamber 3 and chamber 4 have no cc yet"; "no condition yet" where there is one answer; "12 valves have no …". */
export function readingOwed(kind: ReadingKind, points: readonly string[]): string {
  const places = points.map(pointLabel).filter((label) => label !== '')
  if (places.length === 0) return `no ${readingNoun(kind)} yet`
  if (isValveKind(kind) && places.length > mostNamed) return `${places.length} valves have no ${readingNoun(kind)} yet`
  return `${listed(places)} ${places.length === 1 ? 'has' : 'have'} no ${readingNoun(kind)} yet`
}
