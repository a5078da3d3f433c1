import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { pointDrop } from '../clearance/point-drop'
import type { DeckCut } from '../clearance/rigid-motion'
import { radians } from '../units/degrees'

export type InlineIntakeInput = {
  readonly cut: DeckCut
  readonly intakeFaceDeg: number | null | undefined
  /** Port centre in the section frame; a flat cut does not need it. */
  readonly portXIn: number | null | undefined
  readonly portZIn: number | null | undefined
}

export type InlineIntake = {
  readonly alongBoreIn: number
  readonly alongFaceIn: number
}

/**
 * How far the intake ports of an inline engine come down, in inches: d along the bore, d·cos a along the face.
 *
 * @param input intake face −60–60° from square-to-deck, places ±20 in
 *
 * Example: flat 0.030, face at 30° → 0.030 along the bore, 0.0260 along the face.
 * Derived: the drop and its part along a face at a.
 */
export function inlineIntake(input: InlineIntakeInput): Result<InlineIntake> {
  const drop = pointDrop(input.cut, { label: 'port centre', xIn: input.portXIn, zIn: input.portZIn })
  if (!drop.ok) return drop
  const facts = knownFacts({ intakeFaceDeg: factOf('intake face angle', input.intakeFaceDeg, 'valveAngle') })
  if (!facts.ok) return facts
  const alongBoreIn = drop.value.downIn
  return ok({ alongBoreIn, alongFaceIn: alongBoreIn * Math.cos(radians(facts.value.intakeFaceDeg)) })
}
