import type { ReadingKind } from '../readings/types'
import { agreed, together, within } from './compare'
import type { ExpectedLimits } from './limits'
import { figureKey, type Comparison, type Expected, type ExpectedFacts } from './types'

type Tolerance = (limits: ExpectedLimits, value: number) => number

/** Kinds that have a tolerance of the shop, in the unit of the kind. */
const tolerances: Partial<Record<ReadingKind, Tolerance>> = {
  'seat-width': ({ seatWidthToleranceIn }) => seatWidthToleranceIn,
  sink: ({ recessionToleranceIn }) => recessionToleranceIn,
  'stem-height': ({ stemHeightToleranceIn }) => stemHeightToleranceIn,
  'installed-height': ({ installedHeightToleranceIn }) => installedHeightToleranceIn,
  'retainer-to-seal': ({ retainerToSealToleranceIn }) => retainerToSealToleranceIn,
  'coil-bind': ({ coilBindToleranceIn }) => coilBindToleranceIn,
  'spring-pressure': ({ springPressureTolerancePart }, value) => springPressureTolerancePart * Math.abs(value),
}

/** Whether the shop has a tolerance for this kind. */
export const hasTolerance = (kind: ReadingKind): boolean => kind in tolerances

/**
 * What a figure with a tolerance is expected to be, in the unit of its kind: the wanted one, and the other valves of its
 * kind; on a head that has none, the mate's.
 *
 * @returns null when there is nothing to hold it against
 *
 * Room: three tolerances of the shop. Common practice.
 * Example: installed height wanted 1.800, tolerance 0.010 → 1.770 to 1.830.
 */
export function expectedWanted(kind: ReadingKind, point: string, facts: ExpectedFacts): Expected | null {
  const tolerance = tolerances[kind]
  if (!tolerance) return null
  const group = groupOf(point)
  const room = (value: number): number => facts.limits.expectTimesTolerance * tolerance(facts.limits, value)
  const about = (value: number | null | undefined, why: Comparison['why']): Comparison | null =>
    value === null || value === undefined ? null : within(value, room(value), why)
  const own = together([
    about(facts.wanted[figureKey(kind, group)], { code: 'wanted' }),
    about(otherValves(kind, point, facts, room), { code: 'other-valves' }),
  ])
  return own ?? together([about(facts.mate[figureKey(kind, group)], { code: 'mate' })])
}

/** "intake" of "3-intake"; "seat" and "open" of spring pressures stand for themselves. */
export const groupOf = (point: string): string => point.replace(/^\d+-/, '')

function otherValves(
  kind: ReadingKind,
  point: string,
  { here }: ExpectedFacts,
  room: (value: number) => number,
): number | null {
  const others = Object.entries(here).flatMap(([key, value]) => {
    const [of, other = ''] = key.split('|')
    return of === kind && other !== point && groupOf(other) === groupOf(point) ? [value] : []
  })
  return agreed(others, room)
}
