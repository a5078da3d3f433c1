import { circleOver } from '../seat/circles'
import { motionOf } from '../clearance/rigid-motion'
import { tiltOf, valveAxis } from '../clearance/valve-axis'
import { radians } from '../units/degrees'
import { agreed, together, within } from './compare'
import { cutHere } from './cut-here'
import { portOf } from '../readings/valves'
import {
  figureKey,
  knownKey,
  type Comparison,
  type CutSince,
  type Expected,
  type ExpectedFacts,
  type SeatFacts,
} from './types'

/**
 * What the depth of a seat is expected to be, in inches (−0.25–2), deck to the named circle at its nearest point.
 *
 * @param point "1-intake": chamber and port
 * @returns null when there is nothing to hold it against
 *
 * Before the cut: the record less what is gone, and the other valves of its kind. After: its own depth before less what
 * was really cut there, plus what the seat was sunk. Example: 0.105 before, 0.020 flat, not sunk → 0.085 ± 0.005.
 * Derived: as `seatDepthAfter`.
 */
export function expectedSeatDepth(point: string, facts: ExpectedFacts): Expected | null {
  const after = facts.stepId === 'seat-after' ? afterCut(point, facts) : null
  return together(after ? [after] : [ofRecord(point, facts), ofOtherValves(point, facts)])
}

/**
 * Depth of a seat's circle at its nearest point after a cut, in inches.
 *
 * @param beforeIn depth before, @param cut depth at both edges, @param sinkIn how far the seat was sunk along the valve
 * @returns null when the cut leans and the place or the size of the circle is not known
 *
 * A flat cut takes its own depth. A leaning one: the circle's centre is at before + r·|sin θ|, seen over the new deck, less
 * r·|sin θ′|; a seat sunk by q goes q·cos θ′ away from the deck.
 * Derived: as `circleOver`. Example: 0.105 before, 0.020 flat, valve at 0°, sunk 0.004 → 0.089.
 */
export function seatDepthAfter(
  beforeIn: number,
  cut: CutSince,
  { xIn, radiusIn, valveAngleDeg }: Omit<SeatFacts, 'recordNowIn'>,
  milledWidthIn: number | null,
  sinkIn: number,
): number | null {
  const angleIn = cut.deepIn - cut.shallowIn
  const leanRad = radians(valveAngleDeg ?? 0)
  if (Math.abs(angleIn) < 1e-9) return finite(beforeIn - cut.shallowIn + sinkIn * Math.cos(leanRad))
  const motion = motionOf({ flatIn: cut.shallowIn, angleIn, milledWidthIn })
  if (!motion.ok || xIn === null || radiusIn === null || valveAngleDeg === null) return null
  const axis = valveAxis(valveAngleDeg)
  const centre = { xIn, zIn: beforeIn + radiusIn * tiltOf(axis) }
  const { leastIn } = circleOver(motion.value, { centre, radiusIn, axis })
  return finite(leastIn + sinkIn * Math.cos(leanRad - motion.value.angleRad))
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

function afterCut(point: string, facts: ExpectedFacts): Comparison | null {
  const { before, limits, seats, seatWorkSince, milledWidthIn } = facts
  const beforeIn = before[figureKey('seat-depth', point)]
  const cut = cutHere(facts)
  const port = portOf(point)
  const sinkIn = sinkAt(point, facts) ?? (seatWorkSince ? null : 0)
  if (beforeIn === undefined || !cut || sinkIn === null) return null
  const value = seatDepthAfter(beforeIn, cut, seats[port], milledWidthIn, sinkIn)
  const why = { code: 'before-less-cut', before: beforeIn, depthIn: beforeIn - (value ?? 0) } as const
  return value === null ? null : within(value, limits.expectSeatAfterIn, why)
}

const sinkAt = (point: string, { here, before }: ExpectedFacts): number | undefined =>
  here[knownKey(here, 'sink', point) ?? ''] ?? before[knownKey(before, 'sink', point) ?? '']

function ofRecord(point: string, { seats, limits }: ExpectedFacts): Comparison | null {
  const recordIn = seats[portOf(point)].recordNowIn
  return recordIn === null ? null : within(recordIn, limits.expectSeatBeforeIn, { code: 'record-less-gone' })
}

function ofOtherValves(point: string, { here, limits }: ExpectedFacts): Comparison | null {
  const others = Object.entries(here).flatMap(([key, value]) => {
    const [kind, other = ''] = key.split('|')
    return kind === 'seat-depth' && other !== point && portOf(other) === portOf(point) ? [value] : []
  })
  const room = limits.expectSeatBeforeIn
  // Of two valves the other alone can speak.
  const middle = others.length === 1 ? (others[0] ?? null) : agreed(others, () => room)
  return middle === null ? null : within(middle, room, { code: 'other-valves' })
}
