import { motionOf, type DeckCut } from '../clearance/rigid-motion'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ccPerIn3 } from '../units/factors'
import { checkOutline, openingOfOutline, type OutlinePoint } from './outline'
import { radians } from '../units/degrees'

export type DraftedVolume = {
  /** With the wall as it leans. */
  readonly cc: number
  /** With a wall square to the deck, as the plan reckons. */
  readonly squareCc: number
  /** How much less (negative: more) the cut takes by the draft, as a part of the square figure. */
  readonly lessPart: number
}

/**
 * What a cut takes from a chamber whose wall leans.
 *
 * @param cut flat part and angle part 0–0.5 in, milled width 1–20 in
 * @param outline of the opening on the deck (see `checkOutline`)
 * @param wallDraftDeg all round, −45–45°, positive when the opening shrinks into the head
 * @returns cc, beside the cc of a square wall; refused when the outline is finer than the draft at that depth
 *
 * V = 16.387064·∫A(z)dz, A(z) the part of the opening at height z (every edge moved inward by z·tan draft) where the cut
 * is at least that deep. By Simpson's rule.
 * Example: 60 thou flat, circle of 3.6 in, 10° → 0.6 % less.
 * Derived: volume as the integral of its sections.
 */
export function draftedVolume(
  cut: DeckCut & { readonly milledWidthIn: number },
  outline: readonly OutlinePoint[],
  wallDraftDeg: number,
): Result<DraftedVolume> {
  const motion = motionOf(cut)
  if (!motion.ok) return motion
  const checked = checkOutline(outline, cut.milledWidthIn)
  if (!checked.ok) return checked
  const draft = knownFacts({ wallDraftDeg: factOf('wall draft', wallDraftDeg, 'wallDraft') })
  if (!draft.ok) return draft
  const { flatIn, slope } = motion.value
  const opening = openingOfOutline(checked.value, cut.milledWidthIn)
  if (!opening.ok) return opening
  const squareIn3 = opening.value.areaIn2 * (flatIn + slope * opening.value.centreIn)
  const lean = Math.tan(radians(draft.value.wallDraftDeg))
  const leaningIn3 = integrate(wallOf(checked.value), flatIn, slope, lean)
  if (leaningIn3 === null)
    return refuse('out-of-range', 'The outline has edges too short for that draft at this depth: fewer points.')
  const lessPart = squareIn3 === 0 ? 0 : 1 - leaningIn3 / squareIn3
  return ok({ cc: leaningIn3 * ccPerIn3, squareCc: squareIn3 * ccPerIn3, lessPart })
}

/** A corner of the wall on the deck, and the way it goes when every edge moves inward by one. */
type Corner = OutlinePoint & { readonly inX: number; readonly inY: number }

/** The corners of an anticlockwise outline. */
function wallOf(points: readonly OutlinePoint[]): readonly Corner[] {
  return points.map((point, at) => {
    const before = points[(at + points.length - 1) % points.length] as OutlinePoint
    const after = points[(at + 1) % points.length] as OutlinePoint
    const [m, n] = [inward(before, point), inward(point, after)]
    const share = 1 / (1 + m.xIn * n.xIn + m.yIn * n.yIn)
    return { ...point, inX: share * (m.xIn + n.xIn), inY: share * (m.yIn + n.yIn) }
  })
}

/** Unit normal to the left of a → b: into an anticlockwise outline. */
function inward(a: OutlinePoint, b: OutlinePoint): OutlinePoint {
  const length = Math.hypot(b.xIn - a.xIn, b.yIn - a.yIn)
  return { xIn: (a.yIn - b.yIn) / length, yIn: (b.xIn - a.xIn) / length }
}

/** Whether every edge still runs its own way when moved inward: else one has been moved out of existence. */
function stands(wall: readonly Corner[], byIn: number): boolean {
  return wall.every((a, at) => {
    const b = wall[(at + 1) % wall.length] as Corner
    const [x, y] = [b.xIn - a.xIn, b.yIn - a.yIn]
    return x * (x + byIn * (b.inX - a.inX)) + y * (y + byIn * (b.inY - a.inY)) > 0
  })
}

/** Volume in in³ under the cut; null when the outline does not bear the draft. */
function integrate(wall: readonly Corner[], flatIn: number, slope: number, lean: number): number | null {
  const footIn = meetIn(wall, flatIn, slope, lean, Math.min)
  const deepestIn = meetIn(wall, flatIn, slope, lean, Math.max)
  if (!stands(wall, deepestIn * lean)) return null
  // Whole up to the foot, where its area is quadratic in z; above it the cut runs through the opening.
  const wholeAt = (z: number): number => areaBeyond(wall, z * lean, wholeX)
  const areaAt = (z: number): number =>
    areaBeyond(wall, z * lean, slope === 0 ? wholeX : Math.max(wholeX, (z - flatIn) / slope))
  return simpson(wholeAt, 0, footIn, 2) + overSlope(areaAt, footIn, deepestIn)
}

/** How high the cut meets the leaning wall at its shallowest or deepest corner: found by going there a few times. */
function meetIn(
  wall: readonly Corner[],
  flatIn: number,
  slope: number,
  lean: number,
  edge: (...xs: number[]) => number,
): number {
  let z = flatIn
  for (let round = 0; round < 6; round++) {
    const byIn = z * lean
    z = flatIn + slope * edge(...wall.map(({ xIn, inX }) => xIn + byIn * inX))
  }
  return z
}

/** A round opening begins and ends in a sliver: steps that grow from both ends follow it. */
function overSlope(areaAt: (z: number) => number, from: number, to: number): number {
  const half = (to - from) / 2
  if (half === 0) return 0
  const along = (turn: number) => areaAt(from + half * (1 - Math.cos(turn))) * Math.sin(turn)
  return half * simpson(along, 0, Math.PI, 64)
}

/** Composite Simpson's rule over an even number of steps. */
function simpson(f: (z: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps
  if (h === 0) return 0
  let sum = f(from) + f(to)
  for (let at = 1; at < steps; at++) sum += f(from + at * h) * (at % 2 === 1 ? 4 : 2)
  return (sum * h) / 3
}

/** Short of every deck: all of an opening lies beyond it. */
const wholeX = -10

/** Area in in² of the outline moved inward, as far as it lies on the deep side of x: Σ of its edges' strips. */
function areaBeyond(wall: readonly Corner[], byIn: number, fromX: number): number {
  let area = 0
  let a = wall[wall.length - 1] as Corner
  let [ax, ay] = [a.xIn + byIn * a.inX, a.yIn + byIn * a.inY]
  for (a of wall) {
    const [bx, by] = [a.xIn + byIn * a.inX, a.yIn + byIn * a.inY]
    area += stripBeyond(ax, ay, bx, by, fromX)
    ax = bx
    ay = by
  }
  return area
}

/** What one edge a → b adds to the area beyond x: the strip between it and the line through x, ∫(X − x)dy. */
function stripBeyond(ax: number, ay: number, bx: number, by: number, fromX: number): number {
  const [a, b] = [ax - fromX, bx - fromX]
  if (a >= 0 && b >= 0) return ((a + b) / 2) * (by - ay)
  if (a < 0 && b < 0) return 0
  // Only the part of the edge beyond x counts.
  const [deep, share] = a > b ? [a, a / (a - b)] : [b, b / (b - a)]
  return (deep / 2) * share * (by - ay)
}
