import { ok, refuse, type Result } from '../errors'
import { givenFacts, knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { motionOf, type DeckCut, type Motion } from './rigid-motion'

export type BoltHoleInput = {
  /** The cut; or, on a head that was cut before, the whole lean since the hole was drilled. */
  readonly cut: DeckCut | Motion
  /** Length of the hole through the head after the cut. */
  readonly holeLengthIn: number | null | undefined
  readonly holeDiameterIn: number | null | undefined
  readonly boltDiameterIn: number | null | undefined
  /** With dowels the bolt sits on the hole's axis at the deck; without, the head may shift. */
  readonly dowels: boolean
}

export type BoltHole = {
  /** Opening to be cut at the top of the hole; 0: the bolt passes. */
  readonly slotIn: number
  /**
   * Which wall is opened: seen in the head, a bolt square to the deck leans toward the shallow edge of the whole lean as
   * it rises; `deep`: earlier cuts lean the head the other way by more than this cut. Null when no slot is needed.
   */
  readonly slotToward: 'shallow' | 'deep' | null
  /** How far the bolt leans sideways over the length of the hole. */
  readonly leanIn: number
}

/**
 * The slot that a leaning bolt needs at the top of its hole, in inches.
 *
 * @param input hole length after all cuts 0.1–12 in, hole and bolt diameter 0.1–2 in; a deck that does not lean needs none
 * @returns refused as `contradiction` when the bolt is larger than its hole
 *
 * With dowels: T·sin φ − (D − B)/2; without: B + T·sin φ − D·cos φ; neither less than zero. Takes D·(1 − cos φ)/2, under
 * 0.0002 in at 2°, for nothing.
 * Example: 1°, T 3.5, D 0.500, B 0.4375, with dowels: 0.0611 − 0.0313 = 0.0298 in.
 * Derived: a cylinder that leans by φ in a straight hole.
 */
export function boltHoleSlot(input: BoltHoleInput): Result<BoltHole> {
  const motion = asMotion(input.cut)
  if (!motion.ok) return motion
  const figures = {
    holeLengthIn: factOf('bolt hole length', input.holeLengthIn, 'boltHoleLength'),
    holeDiameterIn: factOf('bolt hole', input.holeDiameterIn, 'boltDiameter'),
    boltDiameterIn: factOf('bolt', input.boltDiameterIn, 'boltDiameter'),
  }
  const { angleRad } = motion.value
  // A deck that does not lean needs none of them, but one that cannot be is not passed over.
  const facts = angleRad === 0 ? givenFacts(figures) : knownFacts(figures)
  if (!facts.ok) return facts
  const { holeLengthIn: T = 0, holeDiameterIn: D = Infinity, boltDiameterIn: B = 0 } = facts.value
  if (B > D) return tooLarge(B, D)
  if (angleRad === 0) return ok({ slotIn: 0, slotToward: null, leanIn: 0 })
  const leanRad = Math.abs(angleRad)
  const leanIn = T * Math.sin(leanRad)
  const needed = input.dowels ? leanIn - (D - B) / 2 : B + leanIn - D * Math.cos(leanRad)
  const slotIn = Math.max(0, needed)
  const toward = angleRad > 0 ? 'shallow' : 'deep'
  return ok({ slotIn, slotToward: slotIn > 0 ? toward : null, leanIn })
}

const tooLarge = (boltIn: number, holeIn: number) =>
  refuse('contradiction', `A bolt of ${boltIn} in does not go into a hole of ${holeIn} in: correct one of them.`, {
    fields: { boltDiameterIn: 'larger than its hole', holeDiameterIn: 'smaller than its bolt' },
  })

const asMotion = (cut: DeckCut | Motion): Result<Motion> => ('slope' in cut ? ok(cut) : motionOf(cut))

/**
 * Depth to which a bolt seat is cut on its high side to stand square to the bolt again, in inches: S·tan φ.
 *
 * @param spotFaceIn diameter of the spot face, 0.2–4 in
 *
 * Example: 1° across 0.875 in → 0.0153 in.
 * Derived: the right triangle over the spot face.
 */
export function spotFaceDepth(cut: DeckCut | Motion, spotFaceIn: number | null | undefined): Result<number> {
  const motion = asMotion(cut)
  if (!motion.ok) return motion
  const facts = knownFacts({ spotFaceIn: factOf('spot face', spotFaceIn, 'spotFace') })
  if (facts.ok) return ok(facts.value.spotFaceIn * Math.abs(motion.value.slope))
  return motion.value.slope === 0 && facts.refusal.code === 'missing' ? ok(0) : facts
}
