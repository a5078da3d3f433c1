import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { moveOf, motionOf, type DeckCut, type Motion } from '../clearance/rigid-motion'
import { gapWording, nearlyFlatWording, type FaceCut } from './face-cut'
import { radians } from '../units/degrees'

export type VIntakeInput = {
  readonly cut: DeckCut
  /** Which edge of the deck the cut is deep at; the intake edge lies toward the valley. */
  readonly deepEdge: 'intake' | 'exhaust'
  readonly bankAngleDeg: number | null | undefined
  /** Of the uncut face, from square-to-deck; positive when the face opens toward the valley. */
  readonly intakeFaceDeg: number | null | undefined
  /** Port centre in the section frame; a flat cut does not need it. */
  readonly portXIn: number | null | undefined
  readonly portZIn: number | null | undefined
  /** Dowels from the shallow edge; an angle cut needs them. */
  readonly dowelXIn: number | null | undefined
  /** Height of the face along itself, for the wedge of an angle cut; null: the wedge is not worked out. */
  readonly faceHeightIn?: number | null
  /** Port centre up the face from its deck end; left out: taken at half height. */
  readonly portUpFaceIn?: number | null
}

export type VIntake = {
  /** Port centre: down along the bank, and away from the valley. */
  readonly dropIn: number
  readonly awayIn: number
  /** Off between head face and manifold flange at the port centre; negative: a gap. */
  readonly sideIn: number
  /** Off the manifold's end rails; negative: a gap under them. */
  readonly railIn: number
  /** What to cut at the two ends of the face; null: needs the face's height (angle cut only). */
  readonly face: FaceCut | null
  /** What else must be said, each a note of its own. */
  readonly notes: readonly string[]
  /** The flange lies nearly flat: a degree of error changes the figure too much to cut to it. */
  readonly doubtful: boolean
}

/**
 * What comes off the intake side of a V engine's head, to bring its ports and the manifold's together again.
 *
 * @param input bank angle 0–180°, intake face −60–60°, places ±20 in, face height 0.2–10 in
 * @returns inches; refused when half the bank and the face angle together come to 85° or more
 *
 * Assumes both heads cut alike and the manifold's flanges parallel to the uncut faces. With h half the bank, a the face
 * angle, d the port centre's drop along the bank and e its move away from the valley: side
 * s = (d·sin h − e·cos h)/cos(h + a), rails v = (d·cos a − e·sin a)/cos(h + a). An angle cut has turned the face: the
 * re-cut is a wedge about the port centre, s ∓ ζ·tan φ, ζ up the re-cut face (− for a cut deep at the exhaust edge).
 * Example: 90° V, face square to the deck, flat 0.030 → side 0.0300, rails 0.0424 in.
 * Derived: the two equations of a move in the plane of the V, solved for side and rails.
 */
export function vIntake(input: VIntakeInput): Result<VIntake> {
  const motion = motionOf(input.cut)
  if (!motion.ok) return motion
  const facts = knownFacts({
    bankAngleDeg: factOf('bank angle', input.bankAngleDeg, 'bankAngle'),
    intakeFaceDeg: factOf('intake face angle', input.intakeFaceDeg, 'valveAngle'),
  })
  if (!facts.ok) return facts
  const h = facts.value.bankAngleDeg / 2
  const a = facts.value.intakeFaceDeg
  if (h + a >= 85) {
    return refuse(
      'out-of-range',
      `Half the bank angle and the face angle come to ${h + a}°: the flange lies nearly flat, and no face cut brings it back.`,
    )
  }
  const move = portMove(motion.value, input)
  if (!move.ok) return move
  const { dropIn, awayIn } = move.value
  const flat = Math.cos(radians(h + a))
  const sideIn = (dropIn * Math.sin(radians(h)) - awayIn * Math.cos(radians(h))) / flat
  const railIn = (dropIn * Math.cos(radians(a)) - awayIn * Math.sin(radians(a))) / flat
  const face = faceCut(motion.value, input, sideIn)
  if (!face.ok) return face
  const notes = notesOn(motion.value, a, h + a, face.value, railIn)
  return ok({ dropIn, awayIn, sideIn, railIn, face: face.value, notes, doubtful: h + a > nearlyFlatDeg })
}

function portMove(motion: Motion, input: VIntakeInput): Result<{ readonly dropIn: number; readonly awayIn: number }> {
  if (motion.angleRad === 0) return ok({ dropIn: motion.flatIn, awayIn: 0 })
  const facts = knownFacts({
    portXIn: factOf('port centre from the shallow edge', input.portXIn, 'length'),
    portZIn: factOf('port centre above the deck', input.portZIn, 'length'),
    dowelXIn: factOf('dowels from the shallow edge', input.dowelXIn, 'length'),
  })
  if (!facts.ok) return facts
  const { portXIn: xIn, portZIn: zIn, dowelXIn } = facts.value
  const { downIn, towardDeepIn } = moveOf(motion, { xIn, zIn }, dowelXIn)
  const sideways = towardDeepIn ?? 0
  return ok({ dropIn: downIn, awayIn: input.deepEdge === 'exhaust' ? sideways : -sideways })
}

function faceCut(motion: Motion, input: VIntakeInput, sideIn: number): Result<FaceCut | null> {
  if (motion.angleRad !== 0 && (input.faceHeightIn === null || input.faceHeightIn === undefined)) return ok(null)
  const heightIn = input.faceHeightIn ?? 1
  const facts = knownFacts({
    faceHeightIn: factOf('intake face height', heightIn, 'faceHeight'),
    portUpFaceIn: ['port centre up the face', input.portUpFaceIn ?? heightIn / 2, 0, heightIn],
  })
  if (!facts.ok) return facts
  const upward = (input.deepEdge === 'exhaust' ? -1 : 1) * motion.slope
  const below = facts.value.portUpFaceIn
  const atDeckEnd = sideIn - upward * below
  const atCoverEnd = sideIn + upward * (facts.value.faceHeightIn - below)
  const gapIn = Math.max(0, -Math.min(atDeckEnd, atCoverEnd))
  return ok({ deckEndIn: atDeckEnd + gapIn, coverEndIn: atCoverEnd + gapIn, gapIn })
}

/** Near 90° a degree of error changes the figure by tan(h + a)·1°: 6.5 % at 75°, 20 % at 85° [derived]. */
const nearlyFlatDeg = 75

function notesOn(
  motion: Motion,
  faceDeg: number,
  flangeDeg: number,
  face: FaceCut | null,
  railIn: number,
): readonly string[] {
  const notes: string[] = []
  if (flangeDeg > nearlyFlatDeg) notes.push(nearlyFlatWording(flangeDeg))
  if (motion.angleRad === 0 && faceDeg === 0) {
    notes.push(
      'the face slides in its own plane and still seals: the figure restores port alignment; ports are often smaller in the manifold, and a small drop can be port matched',
    )
  }
  if (face && face.gapIn > 0) notes.push(gapWording)
  if (railIn < 0) notes.push('the rails open: a gap under the manifold ends')
  return notes
}

/**
 * The intake face's angle from the angle between the manifold's two flanges, in degrees: a = flanges/2 − bank/2.
 *
 * @param flangeAngleDeg 0–180, of the uncut manifold
 *
 * Example: flanges at 110° on a 90° V → 10°.
 * Derived: both faces are parallel to their flanges.
 */
export function faceAngleFromManifold(
  flangeAngleDeg: number | null | undefined,
  bankAngleDeg: number | null | undefined,
): Result<number> {
  const facts = knownFacts({
    flangeAngleDeg: factOf('angle between the flanges', flangeAngleDeg, 'bankAngle'),
    bankAngleDeg: factOf('bank angle', bankAngleDeg, 'bankAngle'),
  })
  if (!facts.ok) return facts
  return ok((facts.value.flangeAngleDeg - facts.value.bankAngleDeg) / 2)
}
