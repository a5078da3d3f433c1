import type { CastingFacts } from '../casting/figures'
import { removedBefore } from '../cut/plan-limits'
import type { CutLimits, HeadNow } from '../cut/plan-types'
import { centroidShareOf } from '../cut/split'
import { targetLine, type LineLimit, type TargetLine } from '../cut/target-line'
import type { Result } from '../errors'
import { placeCircle } from '../seat/circles'
import { ports, seatOf, type Port } from './valve-consequences'

export type LineGround = {
  /** Depth at the chamber's centroid that the target takes, in inches. */
  readonly depthIn: number
  readonly casting: CastingFacts
  readonly heads: readonly HeadNow[]
  readonly limits: CutLimits
  /** Least height of the sealing line over the deck, in inches. */
  readonly sealingMarginIn: number
}

/**
 * The line of flat and angle parts that reach a target, and the stretch of it that every limit leaves: angle, thickness at
 * the deep edge, land under the intake port, seat sealing margin, class. Ranges and refusals as for `targetLine`.
 */
export function lineOf({ depthIn, casting, heads, limits, sealingMarginIn }: LineGround): Result<TargetLine> {
  const { openingCentreIn, milledWidthIn } = casting
  return targetLine({
    depthIn,
    centroidShare: centroidShareOf({ openingCentreIn, milledWidthIn }),
    milledWidthIn: milledWidthIn ?? null,
    largestAngleDeg: limits.classFlatOnly ? 0 : limits.angleLimitDeg,
    limits: [
      ...heads.flatMap((head) => headLimits(head, limits)),
      ...ports.flatMap((port) => sealingLimits(casting, port, sealingMarginIn)),
    ],
  })
}

function headLimits(head: HeadNow, limits: CutLimits): LineLimit[] {
  const { thicknessLeastIn, land, classMaxCutIn } = limits
  const goneIn = removedBefore(head, limits.thicknessNewIn ?? null) ?? 0
  const found: LineLimit[] = []
  if (thicknessLeastIn !== null && head.thicknessIn !== null) {
    const mostIn = head.thicknessIn - thicknessLeastIn
    found.push({ name: 'thickness left at the deep edge', atShare: 1, mostIn })
  }
  if (land) {
    const atShare = land.at === 'deep' ? 1 : 0
    const mostIn = land.newIn - land.leastIn - goneIn
    found.push({ name: 'land left under the intake port', atShare, mostIn })
  }
  if (classMaxCutIn !== null) {
    found.push({ name: 'the class’s deepest cut', atShare: 1, mostIn: classMaxCutIn - goneIn })
  }
  return found
}

/**
 * The deck may come no nearer to the sealing circle than the margin, at either of its two rims in the section. A record
 * that does not place the seat sets no limit here; the answer beside the line says what it needs.
 */
function sealingLimits(casting: CastingFacts, port: Port, marginIn: number): LineLimit[] {
  const placed = placeCircle(seatOf(casting, port), 'sealing', true)
  const { milledWidthIn } = casting
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
