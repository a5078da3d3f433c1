import type { CastingFacts } from '../casting/figures'
import { acrossShare, goneOfHead } from '../cut/plan-limits'
import type { CutLimits, HeadNow } from '../cut/plan-types'
import { centroidShareOf } from '../cut/split'
import { targetLine, type LineLimit, type TargetLine } from '../cut/target-line'
import type { Result } from '../errors'
import type { Edge } from '../head-now/deck-now'
import { atDeeperEnd, deckNowFromNewDeckIn, nothingGone } from '../head-now/gone'
import { nearestSeat } from '../head-now/seat-now'
import { placeCircle } from '../seat/circles'
import { headsOnDeck, type HeadOnDeck } from './heads-on-deck'
import { ports, type Port } from './valve-consequences'

export type LineGround = {
  /** Depth at the chamber's centroid that the target takes, in inches. */
  readonly depthIn: number
  /** The record: every place from the new deck. */
  readonly casting: CastingFacts
  readonly heads: readonly HeadNow[]
  readonly deepEdge: Edge
  readonly limits: CutLimits
  /** Least height of the sealing line over the deck, in inches. */
  readonly sealingMarginIn: number
}

/**
 * The line of flat and angle parts that reach a target, and the stretch of it that every limit leaves: angle, thickness at
 * both edges, land under the intake port, seat sealing margin, class; all from the head as it is now. Ranges and refusals
 * as for `targetLine`.
 */
export function lineOf(ground: LineGround): Result<TargetLine> {
  const { depthIn, casting, heads, deepEdge, limits, sealingMarginIn } = ground
  const { openingCentreIn, milledWidthIn } = casting
  const onDeck = headsOnDeck(heads, casting, { flatIn: 0, angleIn: 0 }, deepEdge)
  return targetLine({
    depthIn,
    centroidShare: centroidShareOf({ openingCentreIn, milledWidthIn }),
    milledWidthIn: milledWidthIn ?? null,
    largestAngleDeg: limits.classFlatOnly ? 0 : limits.angleLimitDeg,
    limits: [
      ...heads.flatMap((head) => headLimits(head, ground)),
      ...onDeck.flatMap((head) => ports.flatMap((port) => sealingLimits(head, casting, port, sealingMarginIn))),
    ],
  })
}

function headLimits(head: HeadNow, { limits, deepEdge }: LineGround): LineLimit[] {
  const { thicknessLeastIn, land, classMaxCutIn } = limits
  const gone = atDeeperEnd(goneOfHead(head, limits.thicknessNewIn ?? null) ?? nothingGone)
  const goneAt = (share: number) => deckNowFromNewDeckIn(gone, acrossShare(share, deepEdge))
  const shallow = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const edges = [
    { atShare: 1, edge: deepEdge, where: 'deep' },
    { atShare: 0, edge: shallow, where: 'shallow' },
  ] as const
  const found: LineLimit[] = []
  for (const { atShare, edge, where } of edges) {
    const thicknessIn = head.edgeThicknessIn?.[edge] ?? head.thicknessIn
    if (thicknessLeastIn !== null && thicknessIn !== null) {
      found.push({ name: `thickness left at the ${where} edge`, atShare, mostIn: thicknessIn - thicknessLeastIn })
    }
    if (classMaxCutIn !== null) {
      found.push({ name: 'the class’s deepest cut', atShare, mostIn: classMaxCutIn - goneAt(atShare) })
    }
  }
  if (land && land.atShare !== null) {
    const { newIn, leastIn, atShare } = land
    found.push({ name: 'land left under the intake port', atShare, mostIn: newIn - leastIn - goneAt(atShare) })
  }
  return found
}

/**
 * The deck may come no nearer to the sealing circle than the margin, at either of its two rims in the section. A seat
 * whose place is not known sets no limit here; the answer beside the line says what it needs.
 */
function sealingLimits(head: HeadOnDeck, record: CastingFacts, port: Port, marginIn: number): LineLimit[] {
  const deck = head.deckBefore.ok ? head.deckBefore.value : null
  const found = nearestSeat({ record, port, deck, readings: head.seatReadings })
  const placed = found.ok ? placeCircle(found.value.seat, 'sealing', true) : found
  const { milledWidthIn } = record
  if (!placed.ok || !milledWidthIn) return []
  const { centre, radiusIn, axis } = placed.value
  const length = Math.hypot(axis.x, axis.z)
  return [1, -1].flatMap((side) => {
    const xIn = centre.xIn - (side * radiusIn * axis.z) / length
    const zIn = centre.zIn + (side * radiusIn * axis.x) / length
    const atShare = xIn / milledWidthIn
    if (atShare < 0 || atShare > 1) return []
    return [{ name: `sealing margin of the ${port} seat`, atShare, mostIn: zIn - marginIn }]
  })
}
