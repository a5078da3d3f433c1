import type { Result } from '../errors'
import { protrusionAfter } from '../flat-deck/protrusion'
import { recessionAfter } from '../flat-deck/recession'
import { chamberOf, portOf } from '../readings/valves'
import { agreed, together, within } from './compare'
import { cutHere } from './cut-here'
import { figureKey, type Comparison, type CutSince, type Expected, type ExpectedFacts, type HeldAgainst } from './types'

type Like = (other: string) => boolean

/**
 * How deep a valve of a flat-deck head is expected to lie, in inches (−0.25–0.5).
 *
 * @param point "1-intake", "1-intake-2": chamber and valve
 * @returns null when there is nothing to hold it against
 *
 * Before the cut: the other valves of its kind. After: its own depth before, less what was cut, plus what it was sunk. Where
 * the corners say that the cut leans, the least is by the deep edge and the most by the shallow one: the valve lies between.
 * Example: 0.040 before, 0.012 flat, not sunk → 0.028 ± 0.005; 0.012 at one edge and 0.016 at the other → 0.019 to 0.033.
 * Derived: as `recessionAfter`.
 */
export function expectedRecession(point: string, facts: ExpectedFacts): Expected | null {
  const after = facts.stepId === 'seat-before' ? null : recessionNow(point, facts)
  const port = portOf(point)
  return together(after ? [after] : [ofOthers('recession', point, facts, (other) => portOf(other) === port)])
}

/**
 * How far an injector is expected to stand out, in inches (−0.25–0.5).
 *
 * @param point "1": the chamber
 * @returns null when there is nothing to hold it against
 *
 * Before the cut: the others. After: its own before, plus what was cut; of a cut that leans, between what its two edges say.
 * Example: 0.060 before, 0.012 flat → 0.072 ± 0.005.
 * Derived: as `protrusionAfter`.
 */
export function expectedProtrusion(point: string, facts: ExpectedFacts): Expected | null {
  const beforeIn = facts.before[figureKey('protrusion', point)]
  const cut = facts.stepId === 'seat-before' ? null : cutHere(facts)
  const after = cut === null ? null : betweenEdges(cut, (depthIn) => protrusionAfter(beforeIn, depthIn))
  if (!after || beforeIn === undefined) return together([ofOthers('protrusion', point, facts, () => true)])
  const why = { code: 'before-and-cut', before: beforeIn, depthIn: after.value - beforeIn } as const
  return together([spread(after, facts.limits.expectSeatAfterIn, why)])
}

type Between = { readonly least: number; readonly value: number; readonly most: number }

/** What the cut leaves by each of its edges, and by its middle: nobody asks here where across the head a valve lies. */
function betweenEdges({ shallowIn, deepIn }: CutSince, left: (depthIn: number) => Result<number>): Between | null {
  const [one, other] = [left(shallowIn), left(deepIn)]
  if (!one.ok || !other.ok) return null
  const ends = [one.value, other.value]
  return { least: Math.min(...ends), value: (one.value + other.value) / 2, most: Math.max(...ends) }
}

const spread = ({ least, value, most }: Between, room: number, why: HeldAgainst): Comparison => ({
  value,
  low: least - room,
  high: most + room,
  why,
})

function recessionNow(point: string, facts: ExpectedFacts): Comparison | null {
  const { before, here, limits, seats, seatWorkSince } = facts
  const beforeIn = before[figureKey('recession', point)]
  const cut = cutHere(facts)
  const port = portOf(point)
  const sink = (at: string) => here[figureKey('sink', at)] ?? before[figureKey('sink', at)]
  const sinkIn = sink(point) ?? sink(port) ?? (seatWorkSince ? null : 0)
  if (beforeIn === undefined || cut === null || sinkIn === null) return null
  const valveAngleDeg = seats[port].valveAngleDeg ?? 0
  const after = betweenEdges(cut, (depthIn) =>
    recessionAfter(beforeIn, depthIn, Math.max(0, sinkIn), { valveAngleDeg }),
  )
  if (!after) return null
  const why = { code: 'before-less-cut', before: beforeIn, depthIn: beforeIn - after.value } as const
  return spread(after, limits.expectSeatAfterIn, why)
}

function ofOthers(
  kind: 'recession' | 'protrusion',
  point: string,
  { here, limits }: ExpectedFacts,
  like: Like,
): Comparison | null {
  const others = Object.entries(here).flatMap(([key, value]) => {
    const [of, other = ''] = key.split('|')
    return of === kind && other !== point && chamberOf(other) !== '' && like(other) ? [value] : []
  })
  const room = limits.expectSeatBeforeIn
  const middle = others.length === 1 ? (others[0] ?? null) : agreed(others, () => room)
  const code = kind === 'recession' ? 'other-valves' : 'other-injectors'
  return middle === null ? null : within(middle, room, { code })
}
