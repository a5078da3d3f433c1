import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { cutAngleDeg, edgeDepthIn } from './angle'
import { shareFact } from './split'

/**
 * Depth that may still go at one place of the deck, all earlier cuts counted: thickness at the deep edge (share 1), land
 * under the intake port (share of the intake edge), seat sealing margin (share of the seat), a class's deepest cut (share 1).
 */
export type LineLimit = {
  /** In words: "thickness left at the deep edge". */
  readonly name: string
  /** Place across the deck as a share of the milled width, from the shallow edge, 0–1. */
  readonly atShare: number
  readonly mostIn: number
}

export type TargetLineInput = {
  /** At the chamber's centroid, which the target takes. */
  readonly depthIn: number
  readonly centroidShare: number | null
  readonly milledWidthIn: number | null
  /** 0: flat cuts only. Null: none but 5°. */
  readonly largestAngleDeg: number | null
  readonly limits: readonly LineLimit[]
}

export type LineEnd = {
  readonly flatIn: number
  readonly angleIn: number
  readonly angleDeg: number
  /** What stops it here. */
  readonly boundBy: string
}

export type TargetLine = {
  /** The whole line: all flat, and all angle if nothing stood in the way. */
  readonly allFlatIn: number
  readonly allAngleIn: number
  /** The part inside the limits, from least angle to most. */
  readonly from: LineEnd
  readonly to: LineEnd
}

type Bound = { readonly angleIn: number; readonly name: string }

/**
 * All cuts that reach a target: the line of (flat part, angle part), and how much of it the limits leave.
 *
 * @param input depth at the centroid 0–0.5 in, centroid's share 0.02–0.98, milled width 1–20 in, limits in inches
 * @returns both ends with what bounds each; refused as `unreachable`, naming what stands against what
 *
 * On the line f = D − s·w a place p goes down by f + p·w = D + (p − s)·w: beyond the centroid a limit bounds the angle from
 * above, short of it (the land at the shallow edge) from below.
 * Example: D 0.060, s 0.635, W 7, 1° at most, 0.085 left at the deep edge → from all flat to w 0.0685, f 0.0165.
 * Derived: every (f, w) with f + w·s = D, cut off where a limit is met.
 */
export function targetLine(input: TargetLineInput): Result<TargetLine> {
  const facts = knownFacts({
    depthIn: factOf('depth at the chamber’s centre', input.depthIn, 'cutDepth'),
    centroidShare: shareFact(input.centroidShare),
    milledWidthIn: factOf('milled width', input.milledWidthIn, 'milledWidth'),
    largestAngleDeg: factOf('largest angle', input.largestAngleDeg ?? quantities.angle.most, 'angle'),
  })
  if (!facts.ok) return facts
  const { depthIn, centroidShare, milledWidthIn, largestAngleDeg } = facts.value
  const limits = [...input.limits, { name: 'the deepest cut there is', atShare: 1, mostIn: quantities.cutDepth.most }]
  for (const { name, atShare, mostIn } of limits) {
    const possible = knownFacts({
      atShare: [`${name}: place`, atShare, 0, 1],
      mostIn: [name, mostIn, -12, 12],
    })
    if (!possible.ok) return possible
  }
  const steepest = steepestIn(largestAngleDeg, milledWidthIn)
  const low: Bound[] = [{ angleIn: 0, name: 'all flat' }]
  const high: Bound[] = [
    { angleIn: depthIn / centroidShare, name: 'all angle' },
    { angleIn: steepest, name: `largest angle, ${largestAngleDeg}°` },
  ]
  for (const { name, atShare, mostIn } of limits) {
    const lever = atShare - centroidShare
    const bound = { angleIn: (mostIn - depthIn) / lever, name }
    if (lever > 0) high.push(bound)
    else if (lever < 0) low.push(bound)
    else if (mostIn < depthIn) return refuse('unreachable', `Out of reach: ${name} leaves ${mostIn.toFixed(3)} in.`)
  }
  const from = low.reduce((worst, one) => (one.angleIn > worst.angleIn ? one : worst))
  const to = high.reduce((worst, one) => (one.angleIn < worst.angleIn ? one : worst))
  if (from.angleIn > to.angleIn + 1e-12) {
    return refuse('unreachable', `No cut reaches the target: ${from.name} stands against ${to.name}.`)
  }
  const end = ({ angleIn, name }: Bound): Result<LineEnd> => {
    const angle = cutAngleDeg(angleIn, milledWidthIn)
    const flatIn = Math.max(0, depthIn - centroidShare * angleIn)
    return angle.ok ? ok({ flatIn, angleIn, angleDeg: angle.value, boundBy: name }) : angle
  }
  const [start, finish] = [end(from), end(to)]
  if (!start.ok) return start
  if (!finish.ok) return finish
  const whole = { allFlatIn: depthIn, allAngleIn: depthIn / centroidShare }
  return ok({ ...whole, from: start.value, to: finish.value })
}

/** Past half an inch at the edge the depth is what bounds, not the angle. */
function steepestIn(largestAngleDeg: number, milledWidthIn: number): number {
  const edge = edgeDepthIn(largestAngleDeg, milledWidthIn)
  return edge.ok ? edge.value : quantities.cutDepth.most
}
