import { motionOf, type DeckCut } from '../clearance/rigid-motion'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { ccPerIn3 } from '../units/factors'
import { checkOutline, signedArea, type OutlinePoint } from './outline'

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
  const draft = knownFacts({ wallDraftDeg: ['wall draft', wallDraftDeg, -45, 45] })
  if (!draft.ok) return draft
  const { flatIn, slope } = motion.value
  const volume = (lean: number) => integrate(checked.value, flatIn, slope, lean)
  const square = volume(0)
  const leaning = volume(Math.tan((draft.value.wallDraftDeg * Math.PI) / 180))
  if (square === null || leaning === null)
    return refuse(
      'out-of-range',
      'The outline has edges too short for that draft at this depth: fewer points.',
    )
  const lessPart = square === 0 ? 0 : 1 - leaning / square
  return ok({ cc: leaning * ccPerIn3, squareCc: square * ccPerIn3, lessPart })
}

/** Volume in in³; null when moving the walls inward turns an edge round. */
function integrate(
  outline: readonly OutlinePoint[],
  flatIn: number,
  slope: number,
  lean: number,
): number | null {
  const meets = (edge: (...xs: number[]) => number) => meetIn(outline, flatIn, slope, lean, edge)
  const [foot, deepestIn] = [meets(Math.min), meets(Math.max)]
  if (foot === null || deepestIn === null) return null
  const areaAt = (z: number): number => {
    const opening = inset(outline, z * lean) ?? []
    return signedArea(slope === 0 ? opening : beyond(opening, (z - flatIn) / slope))
  }
  return simpson(areaAt, 0, foot, 8) + simpson(areaAt, foot, deepestIn, 200)
}

/** How high the cut meets the leaning wall at its shallowest or deepest point: found by going there a few times. */
function meetIn(
  outline: readonly OutlinePoint[],
  flatIn: number,
  slope: number,
  lean: number,
  edge: (...xs: number[]) => number,
): number | null {
  let z = 0
  for (let round = 0; round < 6; round++) {
    const opening = inset(outline, z * lean)
    if (opening === null) return null
    z = flatIn + slope * edge(...opening.map((point) => point.xIn))
  }
  return inset(outline, z * lean) === null ? null : z
}

/** Composite Simpson's rule over an even number of steps. */
function simpson(f: (z: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps
  if (h === 0) return 0
  let sum = f(from) + f(to)
  for (let at = 1; at < steps; at++) sum += f(from + at * h) * (at % 2 === 1 ? 4 : 2)
  return (sum * h) / 3
}

/** Every edge of an anticlockwise outline moved inward; null when one has been moved out of existence. */
function inset(points: readonly OutlinePoint[], byIn: number): readonly OutlinePoint[] | null {
  if (byIn === 0) return points
  const moved = points.map((point, at) => {
    const before = points[(at + points.length - 1) % points.length] as OutlinePoint
    const after = points[(at + 1) % points.length] as OutlinePoint
    const [m, n] = [inward(before, point), inward(point, after)]
    const share = byIn / (1 + m.xIn * n.xIn + m.yIn * n.yIn)
    return { xIn: point.xIn + share * (m.xIn + n.xIn), yIn: point.yIn + share * (m.yIn + n.yIn) }
  })
  const stands = points.every((a, at) => {
    const b = points[(at + 1) % points.length] as OutlinePoint
    const [c, d] = [moved[at] as OutlinePoint, moved[(at + 1) % points.length] as OutlinePoint]
    return (b.xIn - a.xIn) * (d.xIn - c.xIn) + (b.yIn - a.yIn) * (d.yIn - c.yIn) > 0
  })
  return stands ? moved : null
}

/** Unit normal to the left of a → b: into an anticlockwise outline. */
function inward(a: OutlinePoint, b: OutlinePoint): OutlinePoint {
  const length = Math.hypot(b.xIn - a.xIn, b.yIn - a.yIn)
  return { xIn: (a.yIn - b.yIn) / length, yIn: (b.xIn - a.xIn) / length }
}

/** The part of an outline on the deep side of x. */
function beyond(points: readonly OutlinePoint[], xIn: number): OutlinePoint[] {
  return points.flatMap((a, at) => {
    const b = points[(at + 1) % points.length] as OutlinePoint
    const kept = a.xIn >= xIn ? [a] : []
    if (a.xIn >= xIn === b.xIn >= xIn) return kept
    const share = (xIn - a.xIn) / (b.xIn - a.xIn)
    return [...kept, { xIn, yIn: a.yIn + share * (b.yIn - a.yIn) }]
  })
}
