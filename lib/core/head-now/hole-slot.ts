import { boltHoleSlot, type BoltHole } from '../clearance/bolt-hole'
import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { deckNow, type Edge } from './deck-now'
import { deckNowFromNewDeckIn, goneByCut, leastGoneIn, sumOfGone, type Gone } from './gone'

/** A bolt hole as the record has it, its length that of the new head. */
export type HoleOnRecord = {
  readonly lengthNewIn: number | null | undefined
  readonly holeDiameterIn: number | null | undefined
  readonly boltDiameterIn: number | null | undefined
  /** Across from the shallow edge; null: not on record. */
  readonly fromShallowEdgeIn: number | null
}

/** How a bolt stands in its hole; `wholeLean` false: what earlier cuts leaned is not known and not in it. */
export type BoltLean = BoltHole & {
  readonly wholeLean: boolean
  /** Where the bolt seats stand high: at the shallow edge of this cut, unless earlier cuts lean the head the other way. */
  readonly highSide: 'shallow' | 'deep'
}

/**
 * The slot that a bolt needs after a cut, by the whole lean since the hole was drilled and the length after all cuts, in
 * inches.
 *
 * @param before metal gone before the cut; null: not known, then this cut's own lean is all that can be said
 * @param cut flat part and angle part 0–0.5 in, milled width 1–20 in; else as for `boltHoleSlot`
 *
 * T = new length − D at the hole's place; where the place is not on record, D where least is gone: the hole is longest
 * there, and its slot largest. Φ = atan((gone at the deep edge − gone at the shallow edge)/W).
 * Derived: as `boltHoleSlot`, about the deck after all cuts. Example: two cuts of 0.5° at one edge of 7 in, T 3.5 after
 * both, D 0.500, B 0.4375 → 0.0611 − 0.0313 = 0.0298.
 */
export function slotAfterCuts(
  hole: HoleOnRecord,
  before: Gone | null,
  cut: { readonly flatIn: number; readonly angleIn: number; readonly milledWidthIn: number | null | undefined },
  deepEdge: Edge,
): Result<BoltLean> {
  const parts = knownFacts({
    flatIn: factOf('flat part', cut.flatIn, 'cutDepth'),
    angleIn: factOf('angle part', cut.angleIn, 'cutDepth'),
  })
  if (!parts.ok) return parts
  const after = sumOfGone([before ?? goneByCut({ flatIn: 0, angleIn: 0, deepEdge }), goneByCut({ ...cut, deepEdge })])
  const deck = deckNow(after, deepEdge, cut.milledWidthIn)
  if (!deck.ok) return deck
  const { lengthNewIn, holeDiameterIn, boltDiameterIn } = hole
  const found = boltHoleSlot({
    cut: deck.value,
    holeLengthIn:
      typeof lengthNewIn === 'number'
        ? lengthNewIn - goneAtHole(hole, after, deepEdge, cut.milledWidthIn)
        : lengthNewIn,
    holeDiameterIn,
    boltDiameterIn,
    dowels: true,
  })
  return found.ok
    ? ok({ ...found.value, wholeLean: before !== null, highSide: deck.value.angleRad < 0 ? 'deep' : 'shallow' })
    : found
}

function goneAtHole(
  { fromShallowEdgeIn }: HoleOnRecord,
  after: Gone,
  deepEdge: Edge,
  widthIn: number | null | undefined,
): number {
  if (fromShallowEdgeIn === null || !widthIn) return leastGoneIn(after)
  const share = fromShallowEdgeIn / widthIn
  if (!(share >= 0 && share <= 1)) return leastGoneIn(after)
  return Math.max(0, deckNowFromNewDeckIn(after, deepEdge === 'exhaust' ? share : 1 - share))
}
