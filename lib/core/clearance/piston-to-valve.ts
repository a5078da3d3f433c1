import { ok, type Result } from '../errors'
import { givenFacts, knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { heightOver, moveOf, motionOf, type DeckCut, type Motion, type SectionPoint } from './rigid-motion'
import { axisAfter, sectionAngleDeg, tiltOf, valveAxis, type ValveAxis } from './valve-axis'
import { degrees } from '../units/degrees'

/** One valve of the head; what is not known stays null. */
export type ValvePlace = {
  /** Centre of the valve-face rim with the valve shut. */
  readonly xIn: number | null | undefined
  readonly zIn: number | null | undefined
  readonly diameterIn: number | null | undefined
  /** From the deck normal; positive when the valve opens toward the deep edge. */
  readonly valveAngleDeg: number | null | undefined
  /** Second angle of a canted valve, seen from the side; default 0. */
  readonly cantDeg?: number
}

export type PistonToValveInput = {
  readonly cut: DeckCut
  readonly valve: ValvePlace
  readonly liftIn: number | null | undefined
  /** How deep the seat is sunk along the valve axis by the seat work; default 0. */
  readonly sinkIn?: number
  /** Dowels from the shallow edge; only the sideways move of an angle cut needs them. */
  readonly dowelXIn?: number | null
  /** Measured clearance before the cut; null or left out: unknown. */
  readonly measuredIn?: number | null
}

export type PistonToValve = {
  /** Clearance lost, net of what sinking gives back; against a flat crown. Negative: gained. */
  readonly lossIn: number
  /** What the deck alone takes. */
  readonly deckLossIn: number
  readonly sinkBackIn: number
  /** Measured clearance less the loss; null when it was not measured. An estimate: check it at assembly. */
  readonly remainingIn: number | null
  /** For a pocketed piston: the valve's move along its own axis and square to it, and its change of angle. */
  readonly alongAxisIn: number | null
  readonly sidewaysIn: number | null
  readonly angleChangeDeg: number
  /** Angle after the cut; null when the angle before is not known. */
  readonly valveAngleAfterDeg: number | null
}

/**
 * Piston-to-valve clearance lost to a cut, against a flat crown.
 *
 * @param input lift 0–2 in, valve diameter 0.3–5 in, valve angle −60–60°, sink 0–0.25 in, places ±20 in, measured
 *   clearance 0–2 in; a flat cut without sink needs nothing but its depth, an angle cut needs all of the valve's figures
 * @returns loss in inches; an estimate: the clearance is to be checked at assembly
 *
 * Old height − new height of the rim's lowest point, the point found anew after the cut, less q·cos θ'. Rim centre at
 * lift L: (x + L·sin θ, z − L·cos θ); lowest point r·|sin θ| under it. Common practice: a flat cut takes its own depth;
 * an angle cut takes more or less, by where the valve sits.
 * Example: flat 0.030, seat sunk 0.010 at 23° → 0.030 − 0.0092 = 0.0208 in.
 * Derived: heights of the rim before and after the rigid motion.
 */
export function pistonToValve(input: PistonToValveInput): Result<PistonToValve> {
  const motion = motionOf(input.cut)
  if (!motion.ok) return motion
  const given = knownFacts({
    sinkIn: factOf('sink of the seat', input.sinkIn ?? 0, 'sink'),
    cantDeg: factOf('cant of the valve', input.valve.cantDeg ?? 0, 'valveAngle'),
    measuredIn: factOf('measured piston-to-valve', input.measuredIn ?? 0, 'clearance'),
    dowelXIn: factOf('dowels from the shallow edge', input.dowelXIn ?? 0, 'length'),
  })
  if (!given.ok) return given
  const axis = axisIfKnown(input.valve)
  if (!axis.ok) return axis
  const deckLoss = lossToDeck(motion.value, input)
  if (!deckLoss.ok) return deckLoss
  const sinkBack = backFromSink(motion.value, input.valve, given.value.sinkIn)
  if (!sinkBack.ok) return sinkBack
  const lossIn = deckLoss.value - sinkBack.value
  const after = axis.value && axisAfter(axis.value, motion.value)
  return ok({
    lossIn,
    deckLossIn: deckLoss.value,
    sinkBackIn: sinkBack.value,
    remainingIn: typeof input.measuredIn === 'number' ? input.measuredIn - lossIn : null,
    ...pocketMove(motion.value, axis.value, input),
    angleChangeDeg: degrees(motion.value.angleRad),
    valveAngleAfterDeg: after && sectionAngleDeg(after),
  })
}

/**
 * Angle of a valve from the new deck's normal, in degrees, its sign kept: θ' = θ − φ.
 * Example: 23° with 1° taken off on the side the valve opens toward → 22°.
 * Derived: the deck turns by φ, the valve stays in the head.
 */
export function valveAngleAfter(cut: DeckCut, valveAngleDeg: number | null | undefined): Result<number> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  const facts = knownFacts({ valveAngleDeg: factOf('valve angle', valveAngleDeg, 'valveAngle') })
  if (!facts.ok) return facts
  return ok(facts.value.valveAngleDeg - degrees(motion.value.angleRad))
}

function axisIfKnown({ valveAngleDeg, cantDeg }: ValvePlace): Result<ValveAxis | null> {
  if (valveAngleDeg === null || valveAngleDeg === undefined) return ok(null)
  const facts = knownFacts({ valveAngleDeg: factOf('valve angle', valveAngleDeg, 'valveAngle') })
  return facts.ok ? ok(valveAxis(facts.value.valveAngleDeg, cantDeg)) : facts
}

/** A flat cut brings every point down by its own depth, so it needs none of the valve's figures. */
function lossToDeck(motion: Motion, { valve, liftIn }: PistonToValveInput): Result<number> {
  const figures = {
    xIn: factOf('valve from the shallow edge', valve.xIn, 'length'),
    zIn: factOf('valve above the deck', valve.zIn, 'length'),
    diameterIn: factOf('valve diameter', valve.diameterIn, 'valveDiameter'),
    valveAngleDeg: factOf('valve angle', valve.valveAngleDeg, 'valveAngle'),
    liftIn: factOf('valve lift', liftIn, 'lift'),
  }
  if (motion.angleRad === 0) {
    const given = givenFacts(figures)
    return given.ok ? ok(motion.flatIn) : given
  }
  const facts = knownFacts(figures)
  if (!facts.ok) return facts
  const { xIn, zIn, diameterIn, valveAngleDeg } = facts.value
  const before = valveAxis(valveAngleDeg, valve.cantDeg)
  const centre = liftedCentre({ xIn, zIn }, before, facts.value.liftIn)
  const heightBefore = centre.zIn - (diameterIn / 2) * tiltOf(before)
  const heightAfter = heightOver(motion, centre) - (diameterIn / 2) * tiltOf(axisAfter(before, motion))
  return ok(heightBefore - heightAfter)
}

const liftedCentre = (seat: SectionPoint, axis: ValveAxis, liftIn: number): SectionPoint => ({
  xIn: seat.xIn + liftIn * axis.x,
  zIn: seat.zIn + liftIn * axis.z,
})

function backFromSink(motion: Motion, valve: ValvePlace, sinkIn: number): Result<number> {
  if (sinkIn === 0) return ok(0)
  const facts = knownFacts({ valveAngleDeg: factOf('valve angle', valve.valveAngleDeg, 'valveAngle') })
  if (!facts.ok) return facts
  return ok(sinkIn * -axisAfter(valveAxis(facts.value.valveAngleDeg, valve.cantDeg), motion).z)
}

/**
 * The rim centre's move seen from the block, along the valve's axis before the cut and square to it: for a flat cut of m
 * at angle α these are m·cos α and m·sin α (0.030 at 23° → 0.0276 and 0.0117).
 */
function pocketMove(motion: Motion, axis: ValveAxis | null, { valve, liftIn, dowelXIn }: PistonToValveInput) {
  const unknown = { alongAxisIn: null, sidewaysIn: null }
  if (!axis) return unknown
  const seat = { xIn: valve.xIn ?? 0, zIn: valve.zIn ?? 0 }
  const { downIn, towardDeepIn } = moveOf(motion, liftedCentre(seat, axis, liftIn ?? 0), dowelXIn)
  if (towardDeepIn === null) return unknown
  const alongAxisIn = towardDeepIn * axis.x - downIn * axis.z
  const whole = Math.hypot(towardDeepIn, downIn)
  return { alongAxisIn, sidewaysIn: Math.sqrt(Math.max(0, whole ** 2 - alongAxisIn ** 2)) }
}
