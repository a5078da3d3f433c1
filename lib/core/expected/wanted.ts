import type { ReadingKind } from '../readings/types'
import { groupOfReading, wantedOfReading } from '../wanted/of-reading'
import { believed } from '../wanted/spans'
import { toleranceOf } from '../wanted/tolerances'
import { groupOf } from '../readings/valves'
import { agreed, together, within } from './compare'
import type { ExpectedLimits } from './limits'
import { figureKey, type Comparison, type Expected, type ExpectedFacts } from './types'

/** A tolerance of the shop, in the unit of the kind; null: it has none for this kind. */
function shopTolerance(kind: ReadingKind, point: string, value: number, limits: ExpectedLimits): number | null {
  if (kind === 'retainer-to-seal') return limits.retainerToSealToleranceIn
  const group = groupOfReading(kind, point)
  return group && toleranceOf(group, value, limits)
}

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
  if (shopTolerance(kind, point, 0, facts.limits) === null) return null
  const { expectTimesTolerance, ...limits } = facts.limits
  const tolerance = (value: number): number => shopTolerance(kind, point, value, facts.limits) ?? 0
  const room = (value: number): number => expectTimesTolerance * tolerance(value)
  const span = wantedOfReading(kind, point, facts.wanted, limits)
  const wanted = span && believed(span, expectTimesTolerance)
  const about = (value: number | null | undefined, why: Comparison['why']): Comparison | null =>
    value === null || value === undefined ? null : within(value, room(value), why)
  const own = together([
    wanted && { ...wanted, why: { code: 'wanted' } },
    about(otherValves(kind, point, facts, room), { code: 'other-valves' }),
  ])
  return own ?? together([about(facts.mate[figureKey(kind, groupOf(point))], { code: 'mate' })])
}

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
