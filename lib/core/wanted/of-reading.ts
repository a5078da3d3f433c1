import type { ReadingKind } from '../readings/types'
import type { WantedGroup } from './figures'
import { ofEitherPort, wantedSpan, type WantedSpan } from './spans'
import type { WantedTolerances } from './tolerances'
import type { Wanted } from './wanted-of'

/** Which wanted figure a kind of reading is held against. */
const groups: Readonly<Partial<Record<ReadingKind, WantedGroup>>> = {
  'guide-clearance': 'guide-clearance',
  'insert-press': 'insert-press',
  'seat-width': 'seat-width',
  runout: 'runout',
  sink: 'recession',
  'stem-height': 'stem-height',
  'installed-height': 'installed-height',
  'coil-bind': 'coil-bind',
  'seat-pressure': 'seat-pressure',
  'open-pressure': 'open-pressure',
  straightness: 'straightness',
}

/** Of spring pressures the point says which it is. */
const pressureGroups: Readonly<Record<string, WantedGroup>> = { seat: 'seat-pressure', open: 'open-pressure' }

/** The wanted figure that a reading is the answer to; null: none. Example: "sink" → "recession". */
export const groupOfReading = (kind: ReadingKind, point: string): WantedGroup | null =>
  (kind === 'spring-pressure' ? pressureGroups[point] : groups[kind]) ?? null

/**
 * What a reading should be by what is wanted of its head, in the unit of its kind.
 *
 * @param point "intake", "3-exhaust", "across"; a point that names no port is held against both
 * @returns null where nothing is wanted
 *
 * Derived: as `wantedSpan`. Example: seat width of "3-intake", wanted 0.060 ± 0.010 → 0.050 to 0.070.
 */
export function wantedOfReading(
  kind: ReadingKind,
  point: string,
  wanted: Wanted,
  shop: WantedTolerances,
): WantedSpan | null {
  const group = groupOfReading(kind, point)
  if (group === null) return null
  const at = (port: Parameters<typeof wantedSpan>[1]) => wantedSpan(group, port, wanted, shop)
  if (group === 'runout') return at(null)
  if (group === 'straightness') return point === 'across' || point === 'along' ? at(point) : null
  const port = (['intake', 'exhaust'] as const).find((one) => point.split('-').includes(one))
  return port ? at(port) : ofEitherPort({ intake: at('intake'), exhaust: at('exhaust') })
}
