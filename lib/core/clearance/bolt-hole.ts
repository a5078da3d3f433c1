import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { motionOf, type DeckCut } from './rigid-motion'

export type BoltHoleInput = {
  readonly cut: DeckCut
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
   * Which wall is opened: seen in the head, a bolt square to the new deck leans toward the shallow edge as it rises.
   * Null when no slot is needed.
   */
  readonly slotToward: 'shallow' | null
  /** How far the bolt leans sideways over the length of the hole. */
  readonly leanIn: number
}

/**
 * The slot that a leaning bolt needs at the top of its hole, in inches.
 *
 * @param input hole length 0.1–12 in, hole and bolt diameter 0.1–2 in
 *
 * With dowels: T·sin φ − (D − B)/2; without: B + T·sin φ − D·cos φ; neither less than zero. Takes D·(1 − cos φ)/2, under
 * 0.0002 in at 2°, for nothing.
 * Example: 1°, T 3.5, D 0.500, B 0.4375, with dowels: 0.0611 − 0.0313 = 0.0298 in.
 * Derived: a cylinder that leans by φ in a straight hole.
 */
export function boltHoleSlot(input: BoltHoleInput): Result<BoltHole> {
  const motion = motionOf(input.cut)
  if (!motion.ok) return motion
  if (motion.value.angleRad === 0) return ok({ slotIn: 0, slotToward: null, leanIn: 0 })
  const facts = knownFacts({
    holeLengthIn: factOf('bolt hole length', input.holeLengthIn, 'boltHoleLength'),
    holeDiameterIn: factOf('bolt hole', input.holeDiameterIn, 'boltDiameter'),
    boltDiameterIn: factOf('bolt', input.boltDiameterIn, 'boltDiameter'),
  })
  if (!facts.ok) return facts
  const { holeLengthIn: T, holeDiameterIn: D, boltDiameterIn: B } = facts.value
  const leanIn = T * Math.sin(motion.value.angleRad)
  const needed = input.dowels ? leanIn - (D - B) / 2 : B + leanIn - D * Math.cos(motion.value.angleRad)
  const slotIn = Math.max(0, needed)
  return ok({ slotIn, slotToward: slotIn > 0 ? 'shallow' : null, leanIn })
}

/**
 * Depth to which a bolt seat is cut on its high side to stand square to the bolt again, in inches: S·tan φ.
 *
 * @param spotFaceIn diameter of the spot face, 0.2–4 in
 *
 * Example: 1° across 0.875 in → 0.0153 in.
 * Derived: the right triangle over the spot face.
 */
export function spotFaceDepth(cut: DeckCut, spotFaceIn: number | null | undefined): Result<number> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  if (motion.value.slope === 0) return ok(0)
  const facts = knownFacts({ spotFaceIn: factOf('spot face', spotFaceIn, 'spotFace') })
  return facts.ok ? ok(facts.value.spotFaceIn * motion.value.slope) : facts
}
