import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { leastSquaresPlane, type Plane } from './least-squares-plane'
import { degrees } from '../units/degrees'

/** Thickness at one place of the head, before and after. */
export type ThicknessPoint = {
  readonly name: string
  /** The point touched on top: across from the shallow edge, along from end 1. */
  readonly xIn: number
  readonly yIn: number
  readonly beforeIn: number | null | undefined
  readonly afterIn: number | null | undefined
}

export type PlaneFitInput = {
  readonly points: readonly ThicknessPoint[]
  readonly milledWidthIn: number | null | undefined
  readonly deckLengthIn: number | null | undefined
  /** What the readings after the cut were square to: the deck as it was, or the new one the head lies on. */
  readonly gaugedSquareTo: 'old-deck' | 'new-deck'
}

export type PlaneFit = {
  /** Depth at the shallow edge, at mid-length. */
  readonly flatIn: number
  /** Angle part at the deep edge; negative: the other edge is the deep one. */
  readonly angleIn: number
  readonly angleDeg: number
  /** Deeper at the far end than at end 1 by this. */
  readonly taperIn: number
  /** How well the points lie on one plane; null with three, which always do. */
  readonly residual: {
    readonly rmsIn: number
    readonly worstIn: number
    readonly worstPoint: string
  } | null
}

/**
 * What a cut really took, from thickness before and after.
 *
 * @param input three or more points not on one line, thickness 0.3–12 in, milled width 1–20 in, length 1–60 in
 * @returns flat part, angle part and taper in inches; refused when fewer than three points have both readings
 *
 * Least-squares plane of the difference: flat part at x = 0 and mid-length, angle part = slope across · width, taper =
 * slope along · length, residual = root mean square over n. A reading gauged on the new deck is square to that: the
 * thickness in the old direction is reading/cos φ, φ from the fit, iterated (without it the flat part comes out
 * t·(1 − cos φ) too deep: 0.7 thou at 1°, 4.5 in).
 * Example: corners 7 in apart across, 4.500 before; 4.480 and 4.417 after, square to the old deck → flat 0.020, angle
 * part 0.063.
 * Derived: the least-squares plane through the losses, thickness brought to the old direction.
 */
export function planeFit(input: PlaneFitInput): Result<PlaneFit> {
  const readings = bothReadings(input)
  if (!readings.ok) return readings
  const { points, widthIn, lengthIn } = readings.value
  const plane = input.gaugedSquareTo === 'old-deck' ? fitDepths(points, 1) : fitOnNewDeck(points)
  if (!plane) {
    return refuse('missing', 'The points lie on one line: measure one that is off it.', { needs: ['points'] })
  }
  const { at0, perX, perY, cos } = plane
  return ok({
    flatIn: at0 + (perY * lengthIn) / 2,
    angleIn: perX * widthIn,
    angleDeg: degrees(Math.atan(perX)),
    taperIn: perY * lengthIn,
    residual: residualOf(points, plane, cos),
  })
}

type Point = {
  readonly name: string
  readonly xIn: number
  readonly yIn: number
  readonly beforeIn: number
  readonly afterIn: number
}
type FittedPlane = Plane & { readonly cos: number }

function bothReadings(
  input: PlaneFitInput,
): Result<{ readonly points: readonly Point[]; readonly widthIn: number; readonly lengthIn: number }> {
  const size = knownFacts({
    milledWidthIn: factOf('milled width', input.milledWidthIn, 'milledWidth'),
    deckLengthIn: factOf('deck length', input.deckLengthIn, 'deckLength'),
  })
  if (!size.ok) return size
  const points: Point[] = []
  for (const { name, xIn, yIn, beforeIn, afterIn } of input.points) {
    // A place that was read only once says nothing about the cut.
    if (beforeIn === null || beforeIn === undefined || afterIn === null || afterIn === undefined) continue
    const facts = knownFacts({
      xIn: [`place of ${name} across`, xIn, -1, 21],
      yIn: [`place of ${name} along`, yIn, -1, 61],
      beforeIn: factOf(`thickness before at ${name}`, beforeIn, 'thickness'),
      afterIn: factOf(`thickness after at ${name}`, afterIn, 'thickness'),
    })
    if (!facts.ok) return facts
    points.push({ name, ...facts.value })
  }
  if (points.length < 3) {
    const said = `Needs thickness before and after at three places or more; there are ${points.length}.`
    return refuse('missing', said, { needs: ['points'] })
  }
  return ok({ points, widthIn: size.value.milledWidthIn, lengthIn: size.value.deckLengthIn })
}

const depthOf = (point: Point, cos: number) => point.beforeIn - point.afterIn / cos

function fitDepths(points: readonly Point[], cos: number): FittedPlane | null {
  const plane = leastSquaresPlane(points.map((point) => [point.xIn, point.yIn, depthOf(point, cos)] as const))
  return plane && { ...plane, cos }
}

/** The cosine settles by far more than a millionth of an inch in a few turns, angles being under 5°. */
const turns = 8

function fitOnNewDeck(points: readonly Point[]): FittedPlane | null {
  let plane = fitDepths(points, 1)
  for (let turn = 0; turn < turns && plane; turn++) {
    plane = fitDepths(points, 1 / Math.hypot(1, plane.perX, plane.perY))
  }
  return plane
}

function residualOf(points: readonly Point[], plane: Plane, cos: number): PlaneFit['residual'] {
  if (points.length === 3) return null
  const residuals = points.map((point) => ({
    name: point.name,
    offIn: depthOf(point, cos) - (plane.at0 + plane.perX * point.xIn + plane.perY * point.yIn),
  }))
  const squares = residuals.reduce((sum, { offIn }) => sum + offIn ** 2, 0)
  const worst = residuals.reduce((most, one) => (Math.abs(one.offIn) > Math.abs(most.offIn) ? one : most))
  return { rmsIn: Math.sqrt(squares / points.length), worstIn: worst.offIn, worstPoint: worst.name }
}
