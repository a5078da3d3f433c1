import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'

export type Reach = {
  /** How much farther the bolt, or the dowel, reaches into its hole than when the head was new. */
  readonly deeperIn: number
  /** Room left before it bottoms; negative: it bottoms. */
  readonly leftIn: number
  readonly bottoms: boolean
}

/**
 * Whether a bolt still has thread left in a blind hole, in inches.
 *
 * @param totalGoneIn metal gone at the hole since new, all cuts counted, 0–1
 * @param spotFaceIn depth to which the bolt seat was cut, 0–1
 * @param threadLeftIn thread left under the bolt when the head was new, 0–4
 *
 * Left = thread left − (metal gone + spot face). Bolts are chosen and torqued by the maker's instructions.
 * Example: 0.083 gone and 0.015 spot face with 0.120 of thread left → 0.022 in.
 * Derived: the head is thinner by what is gone, so the bolt goes in deeper by as much.
 */
export function boltReach(
  totalGoneIn: number | null | undefined,
  spotFaceIn: number,
  threadLeftIn: number | null | undefined,
): Result<Reach> {
  const facts = knownFacts({
    totalGoneIn: factOf('metal removed since new', totalGoneIn, 'removed'),
    spotFaceIn: ['depth of the spot face', spotFaceIn, 0, 1],
    threadLeftIn: factOf('thread left in the blind hole', threadLeftIn, 'holeDepth'),
  })
  if (!facts.ok) return facts
  return ok(reach(facts.value.totalGoneIn + facts.value.spotFaceIn, facts.value.threadLeftIn))
}

/**
 * Whether the dowels still go home, in inches.
 *
 * @param totalGoneIn metal gone at the dowels since new, 0–1
 * @param spareDepthIn depth of the dowel hole under the dowel's end when the head was new, 0–4
 *
 * Left = spare depth − metal gone. Example: 0.083 gone with 0.100 to spare → 0.017 in.
 * Derived: the dowel reaches into its hole by what is gone.
 */
export function dowelFit(
  totalGoneIn: number | null | undefined,
  spareDepthIn: number | null | undefined,
): Result<Reach> {
  const facts = knownFacts({
    totalGoneIn: factOf('metal removed since new', totalGoneIn, 'removed'),
    spareDepthIn: factOf('spare depth of the dowel hole', spareDepthIn, 'holeDepth'),
  })
  if (!facts.ok) return facts
  return ok(reach(facts.value.totalGoneIn, facts.value.spareDepthIn))
}

function reach(deeperIn: number, roomIn: number): Reach {
  const leftIn = roomIn - deeperIn
  return { deeperIn, leftIn, bottoms: leftIn < 0 }
}
