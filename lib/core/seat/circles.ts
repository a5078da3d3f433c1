import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import type { Motion, SectionPoint } from '../clearance/rigid-motion'
import { heightOver } from '../clearance/rigid-motion'
import { axisAfter, tiltOf, valveAxis, type ValveAxis } from '../clearance/valve-axis'
import { ok, type Result } from '../errors'

/**
 * The three circles of a seat, all on the valve's axis: the insert's outer edge, where the top cut meets the chamber, and
 * the outer edge of the sealing seat. The sealing one is the origin of the others' offsets.
 */
export type CircleName = 'insert' | 'top-cut' | 'sealing'

export type SeatCircle = {
  readonly diameterIn: number | null | undefined
  /** Along the axis from the sealing circle, positive the way the valve opens. */
  readonly offsetIn: number | null | undefined
}

export type SeatGauge = {
  /** Depth from the deck to a circle at its nearest point, and which circle that was. */
  readonly depthIn: number | null | undefined
  readonly circle: CircleName
}

export type Seat = {
  readonly circles: Readonly<Record<'insert' | 'top-cut', SeatCircle>> & {
    readonly sealing: Omit<SeatCircle, 'offsetIn'>
  }
  readonly gauge: SeatGauge
  /** Centre of the sealing circle from the shallow edge; an angle cut needs it. */
  readonly xIn: number | null | undefined
  readonly valveAngleDeg: number | null | undefined
  readonly cantDeg?: number
}

/** A circle of the seat, placed: where its centre is, and how large. */
export type PlacedCircle = {
  readonly centre: SectionPoint
  readonly radiusIn: number
  readonly axis: ValveAxis
}

/**
 * Where a named circle of the seat lies in the head, from one gauge reading.
 *
 * @param seat diameters 0.3–6 in, offsets ±1 in, gauge depth −1.25–2 in (negative: an earlier cut
 *   has gone past it), valve angle −60–60°
 * @param isAngleCut an angle cut needs the place across; a flat cut does not, and takes x = 0
 *
 * The gauged circle's centre is at g + r·|sin θ|, r of that circle; the others lie along the axis from it.
 * Example: g 0.100 to a 1.900 circle at 23° → its centre 0.4712 in up.
 * Derived: a circle about the valve axis reaches r·|sin θ| below its centre.
 */
export function placeCircle(seat: Seat, name: CircleName, isAngleCut: boolean): Result<PlacedCircle> {
  const gauged = circleOf(seat, seat.gauge.circle)
  const asked = circleOf(seat, name)
  const facts = knownFacts({
    valveAngleDeg: factOf('valve angle', seat.valveAngleDeg, 'valveAngle'),
    cantDeg: factOf('cant of the valve', seat.cantDeg ?? 0, 'valveAngle'),
    depthIn: factOf(`gauge depth to the ${circleLabel[seat.gauge.circle]}`, seat.gauge.depthIn, 'seatDepthNow'),
    gaugedDiameterIn: factOf(`diameter of the ${circleLabel[seat.gauge.circle]}`, gauged.diameterIn, 'seatCircle'),
    gaugedOffsetIn: factOf(`offset of the ${circleLabel[seat.gauge.circle]}`, gauged.offsetIn, 'seatOffset'),
    diameterIn: factOf(`diameter of the ${circleLabel[name]}`, asked.diameterIn, 'seatCircle'),
    offsetIn: factOf(`offset of the ${circleLabel[name]}`, asked.offsetIn, 'seatOffset'),
    xIn: factOf('valve from the shallow edge', isAngleCut ? seat.xIn : 0, 'length'),
  })
  if (!facts.ok) return facts
  const axis = valveAxis(facts.value.valveAngleDeg, facts.value.cantDeg)
  const gaugedZIn = facts.value.depthIn + (facts.value.gaugedDiameterIn / 2) * tiltOf(axis)
  const centre = {
    xIn: facts.value.xIn + facts.value.offsetIn * axis.x,
    zIn: gaugedZIn + (facts.value.offsetIn - facts.value.gaugedOffsetIn) * axis.z,
  }
  return ok({ centre, radiusIn: facts.value.diameterIn / 2, axis })
}

const circleOf = (seat: Seat, name: CircleName): SeatCircle =>
  name === 'sealing' ? { ...seat.circles.sealing, offsetIn: 0 } : seat.circles[name]

export const circleLabel: Readonly<Record<CircleName, string>> = {
  insert: "insert's outer edge",
  'top-cut': 'top-cut circle',
  sealing: 'sealing circle',
}

/** A circle seen from the new deck: height of its centre, and how far its rim lies above and below that. */
export type CircleOverDeck = {
  readonly centreIn: number
  readonly swingIn: number
  /** Least height; negative when the cut has gone through it. */
  readonly leastIn: number
  /** Which part of the rim is nearest to the deck. */
  readonly nearest: 'shallow' | 'deep' | 'all round'
}

/** Swings of less than this are a circle that lies level. */
const levelIn = 1e-9

/**
 * A circle's heights over the new deck, in inches: they vary round it by ±r·sin of its angle to the new deck's normal.
 * A valve that opens toward the deep edge has its nearest rim on the shallow side.
 * Derived: as `heightOver` for the centre, ±r·sin for the rim. Example: radius 1 in, 22° to the new deck → swing
 * 0.3746 in.
 */
export function circleOver(motion: Motion, circle: PlacedCircle): CircleOverDeck {
  const after = axisAfter(circle.axis, motion)
  const centreIn = heightOver(motion, circle.centre)
  const swingIn = circle.radiusIn * tiltOf(after)
  const level = swingIn < levelIn
  const nearest = level ? 'all round' : after.x > 0 ? 'shallow' : 'deep'
  return { centreIn, swingIn, leastIn: centreIn - swingIn, nearest }
}

/**
 * Share of a circle that lies below the deck, 0–1: acos(c/ρ)/π for a centre at height c and a swing of ρ; a level circle
 * is lost whole or not at all. Example: centre on the deck → 0.5.
 * Derived: the part of a turn in which c + ρ·cos t is below zero.
 */
export function shareBelow({ centreIn, swingIn }: CircleOverDeck): number {
  // A hair's breadth of rounding is no loss: a cut of nothing must lose nothing.
  if (centreIn >= swingIn - levelIn) return 0
  if (centreIn <= -swingIn) return 1
  return Math.acos(centreIn / swingIn) / Math.PI
}
