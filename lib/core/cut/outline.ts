import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'

/** A point of the chamber's outline on the deck: across from the shallow edge, along from end 1. */
export type OutlinePoint = { readonly xIn: number; readonly yIn: number }

/** What a cut asks of a chamber's opening. */
export type Opening = { readonly areaIn2: number; readonly centreIn: number }

const next = (points: readonly OutlinePoint[], at: number): OutlinePoint =>
  points[(at + 1) % points.length] as OutlinePoint

/** Twice the area on the left of the way a → b → c. */
const cross = (a: OutlinePoint, b: OutlinePoint, c: OutlinePoint): number =>
  (b.xIn - a.xIn) * (c.yIn - a.yIn) - (b.yIn - a.yIn) * (c.xIn - a.xIn)

/**
 * Area of a closed outline in in², positive when it runs anticlockwise (shoelace).
 * Derived: half the sum of the cross products of neighbours. Example: a square of 2 in, anticlockwise → 4 in².
 */
export function signedArea(points: readonly OutlinePoint[]): number {
  return points.reduce((sum, a, at) => {
    const b = next(points, at)
    return sum + (a.xIn * b.yIn - b.xIn * a.yIn) / 2
  }, 0)
}

/**
 * Length of a closed outline in inches: Σ√(Δx² + Δy²), the last point joined to the first. A square of 3 in: 12.
 * Derived: Pythagoras for each edge. Example: a square of 2 in → 8 in.
 */
export function outlinePerimeterIn(points: readonly OutlinePoint[]): number {
  return points.reduce((sum, a, at) => {
    const b = next(points, at)
    return sum + Math.hypot(b.xIn - a.xIn, b.yIn - a.yIn)
  }, 0)
}

/** No head is longer. */
const longestIn = quantities.alongHead.most

/**
 * The outline as it may be computed with: inside the deck, not crossing itself, anticlockwise.
 *
 * @param points three or more, either way round, in inches; the last joins the first
 * @param milledWidthIn 1–20 in: every x lies in 0 … W; y is measured along the head, within the length of any head
 */
export function checkOutline(points: readonly OutlinePoint[], milledWidthIn: number): Result<readonly OutlinePoint[]> {
  const width = knownFacts({ milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth') })
  if (!width.ok) return width
  if (points.length < 3) return refuse('missing', 'An outline has three points or more.', { needs: ['outline'] })
  if (!points.every(({ xIn, yIn }) => xIn >= 0 && xIn <= milledWidthIn && Math.abs(yIn) <= longestIn))
    return refuse('out-of-range', `The outline must lie on the deck, 0 to ${milledWidthIn} in across.`)
  if (crossingEdges(points)) return refuse('contradiction', 'The outline crosses or touches itself.')
  const area = knownFacts({ areaIn2: factOf('opening area', Math.abs(signedArea(points)), 'area') })
  if (!area.ok) return area
  return ok(signedArea(points) > 0 ? points : points.toReversed())
}

/**
 * The first two edges of a closed outline that cross, touch, or run back over one another: each by the place of the point
 * it begins at, counted from 0. Null when the outline keeps clear of itself.
 */
export function crossingEdges(points: readonly OutlinePoint[]): readonly [number, number] | null {
  const last = points.length - 1
  for (const [i, a] of points.entries()) {
    for (let j = i + 1; j <= last; j += 1) {
      const neighbours = j === i + 1 || (i === 0 && j === last)
      const clash = neighbours
        ? turnsBack(points, j === i + 1 ? i : j)
        : meet(a, next(points, i), points[j] as OutlinePoint, next(points, j))
      if (clash) return [i, j]
    }
  }
  return null
}

/** An edge that runs back over the one before it, or has no length. */
function turnsBack(points: readonly OutlinePoint[], at: number): boolean {
  const a = points[at] as OutlinePoint
  const b = next(points, at)
  const c = next(points, at + 1)
  const along = (b.xIn - a.xIn) * (c.xIn - b.xIn) + (b.yIn - a.yIn) * (c.yIn - b.yIn)
  return cross(a, b, c) === 0 && along <= 0
}

const apart = (a: number, b: number, c: number, d: number): boolean =>
  Math.max(a, b) < Math.min(c, d) || Math.max(c, d) < Math.min(a, b)

/** Whether two edges have a point in common; most are far apart, which is seen at once. */
function meet(a: OutlinePoint, b: OutlinePoint, c: OutlinePoint, d: OutlinePoint): boolean {
  if (apart(a.xIn, b.xIn, c.xIn, d.xIn) || apart(a.yIn, b.yIn, c.yIn, d.yIn)) return false
  const sides = [cross(a, b, c), cross(a, b, d), cross(c, d, a), cross(c, d, b)] as const
  if (sides[0] * sides[1] < 0 && sides[2] * sides[3] < 0) return true
  const between = (p: OutlinePoint, q: OutlinePoint, r: OutlinePoint) =>
    Math.min(p.xIn, q.xIn) <= r.xIn &&
    r.xIn <= Math.max(p.xIn, q.xIn) &&
    Math.min(p.yIn, q.yIn) <= r.yIn &&
    r.yIn <= Math.max(p.yIn, q.yIn)
  return (
    (sides[0] === 0 && between(a, b, c)) ||
    (sides[1] === 0 && between(a, b, d)) ||
    (sides[2] === 0 && between(c, d, a)) ||
    (sides[3] === 0 && between(c, d, b))
  )
}

/**
 * Area and centre of a chamber's opening from its traced outline.
 *
 * @param points as for `checkOutline`; the area must be 0.5–40 in²
 * @returns area in in², the centroid's distance from the shallow edge in inches; refused when the outline crosses itself
 *   (`contradiction`) or leaves the deck (`out-of-range`)
 *
 * A = Σ(x_i·y_j − x_j·y_i)/2, x_c = Σ(x_i + x_j)(x_i·y_j − x_j·y_i)/6A. Taken about a point of the outline, so that a
 * chamber far along the head loses nothing by rounding.
 * Example: a square of 3 in from x = 2: 9 in², centre 3.5.
 * Derived: area and first moment of a polygon, by triangles from the origin.
 */
export function openingOfOutline(points: readonly OutlinePoint[], milledWidthIn: number): Result<Opening> {
  const outline = checkOutline(points, milledWidthIn)
  if (!outline.ok) return outline
  const origin = outline.value[0] as OutlinePoint
  const near = outline.value.map(({ xIn, yIn }) => ({ xIn: xIn - origin.xIn, yIn: yIn - origin.yIn }))
  const areaIn2 = signedArea(near)
  const moment = near.reduce((sum, a, at) => {
    const b = next(near, at)
    return sum + ((a.xIn + b.xIn) * (a.xIn * b.yIn - b.xIn * a.yIn)) / 6
  }, 0)
  return ok({ areaIn2, centreIn: origin.xIn + moment / areaIn2 })
}
