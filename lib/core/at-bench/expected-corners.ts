import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ok, type Result } from '../errors'
import { atTheEdges, cornerPoint, type CornerName } from '../straightness/corner-point'
import { cornerNames, insetOf, type Corners, type Deck } from '../straightness/corners-fit'

export type CornerExpected = { readonly corner: CornerName; readonly valueIn: number }

/**
 * What the corners should read after a cut, in inches, gauged with the head on its new deck.
 *
 * @param before thickness at the corners, 0.3–12 in; a corner that was not read is left out
 * @param cut flat part and angle part at the deep edge, 0–0.5 in each
 * @param deck its milled width, and where its corners are touched, are needed for an angle cut alone
 * @returns refused when one of them is not known
 *
 * after = (before − flat − angle·x/W)·cos φ, φ = atan(angle/W).
 * Example: 4.500 before, 20 thou flat → 4.480 at every corner.
 * Derived: the cut's depth at the place touched, read square to the new deck.
 */
export function expectedCorners(
  before: Corners,
  cut: { readonly flatIn: number; readonly angleIn: number },
  deck: Deck,
): Result<readonly CornerExpected[]> {
  const tilted = cut.angleIn > 0
  const facts = knownFacts({
    flatIn: factOf('flat part', cut.flatIn, 'cutDepth'),
    angleIn: factOf('angle part', cut.angleIn, 'cutDepth'),
    milledWidthIn: factOf('milled width', tilted ? deck.milledWidthIn : 1, 'milledWidth'),
  })
  if (!facts.ok) return facts
  const inset = tilted ? insetOf(deck) : ok(atTheEdges)
  if (!inset.ok) return inset
  const { flatIn, angleIn, milledWidthIn } = facts.value
  const cos = milledWidthIn / Math.hypot(milledWidthIn, angleIn)
  const place = { deepEdge: deck.deepEdge, milledWidthIn, deckLengthIn: deck.deckLengthIn ?? 1 }
  return ok(
    cornerNames.flatMap((corner) => {
      const beforeIn = before[corner]
      if (beforeIn === undefined || beforeIn === null) return []
      const share = tilted ? cornerPoint(corner, place, inset.value).xIn / milledWidthIn : 0
      return [{ corner, valueIn: (beforeIn - flatIn - angleIn * share) * cos }]
    }),
  )
}
