import { ok, refuse, type Result } from '../errors'
import { checkLimits, leastLiftIn } from './limits'

/** A point of the curve with the slope the curve has there. */
export type CurveKnot = {
  readonly liftIn: number
  readonly flowCfm: number
  /** cfm per inch of lift. */
  readonly slope: number
}

export type FlowCurve = readonly CurveKnot[]

type Taken = { readonly liftIn: number; readonly flowCfm: number }

/**
 * Smooth curve through the points of a flow run that never overshoots a reading.
 *
 * @param points lift (in, 0–2) and flow (cfm, 0–2000), in any order, at least two, no lift twice
 * @returns the knots in order of lift, with their slopes
 *
 * Formula: cubic pieces; inside, Steffen's slope (sign s₀ + sign s₁)·min(|s₀|, |s₁|, |p|/2), s the slopes of the two
 * neighbouring chords and p = (s₀·h₁ + s₁·h₀)/(h₀ + h₁); at an end (3·s − t)/2, t the slope at the knot beside it.
 * Source: M. Steffen, Astronomy and Astrophysics 239 (1990) 443–450; the end rule is the one under which a parabola
 * through the end piece has no bend at the end. Other monotone cubics differ by up to 2 % at a point.
 * Example: (0, 0), (0.1, 60), (0.2, 110) → slopes 625, 550, 475 cfm/in.
 */
export function monotoneCurve(points: readonly Taken[]): Result<FlowCurve> {
  if (points.length < 2) {
    return refuse('missing', 'A flow curve needs at least two lifts with a reading.', { needs: ['points'] })
  }
  for (const point of points) {
    const checked = checkLimits({ liftIn: point.liftIn, flowCfm: point.flowCfm })
    if (!checked.ok) return checked
  }
  const sorted = [...points].sort((a, b) => a.liftIn - b.liftIn)
  const twice = repeatedLift(sorted)
  if (twice !== undefined) return refuse('contradiction', `The lift ${twice} in is there twice.`)
  const slopes = knotSlopes(sorted)
  return ok(sorted.map(({ liftIn, flowCfm }, i) => ({ liftIn, flowCfm, slope: slopes[i] ?? 0 })))
}

/** The first lift that is there twice, of points in order of lift. */
export const repeatedLift = (points: readonly { readonly liftIn: number }[]): number | undefined =>
  points.find((point, i) => (points[i + 1]?.liftIn ?? Infinity) - point.liftIn < leastLiftIn)?.liftIn

function knotSlopes(points: readonly Taken[]): number[] {
  const gaps: number[] = []
  const chords: number[] = []
  points.slice(1).forEach((next, i) => {
    const point = points[i] ?? next
    gaps.push(next.liftIn - point.liftIn)
    chords.push((next.flowCfm - point.flowCfm) / (next.liftIn - point.liftIn))
  })
  const first = chords[0] ?? 0
  const last = chords[chords.length - 1] ?? 0
  const inner = chords.slice(1).map((s1, i) => innerSlope(gaps[i] ?? 1, gaps[i + 1] ?? 1, chords[i] ?? s1, s1))
  const beside = inner[inner.length - 1]
  return [endSlope(first, inner[0]), ...inner, endSlope(last, beside)]
}

function innerSlope(h0: number, h1: number, s0: number, s1: number): number {
  const parabola = (s0 * h1 + s1 * h0) / (h0 + h1)
  const steepest = Math.min(Math.abs(s0), Math.abs(s1), Math.abs(parabola) / 2)
  return (Math.sign(s0) + Math.sign(s1)) * steepest
}

/** With two points only there is no knot beside it: the curve is the chord. */
const endSlope = (chord: number, beside: number | undefined): number =>
  beside === undefined ? chord : (3 * chord - beside) / 2

/**
 * Flow read off the curve.
 *
 * @param curve from `monotoneCurve`
 * @param askedIn lift, in, inside the measured span: there is no extrapolation
 * @returns cfm
 *
 * Formula: cubic Hermite interpolation between the two knots. Example: the curve above at 0.150 in → 85.9 cfm.
 * Derived: the cubic of the two neighbouring readings.
 */
export function flowAt(curve: FlowCurve, askedIn: number): Result<number> {
  const liftIn = withoutRounding(curve, askedIn)
  const right = curve.findIndex((knot) => knot.liftIn >= liftIn)
  const b = curve[right]
  const a = curve[right - 1] ?? b
  if (a === undefined || b === undefined || (right === 0 && liftIn < b.liftIn)) {
    return refuse('out-of-range', `The lift ${liftIn} in lies outside the lifts that were run.`)
  }
  return ok(hermite(a, b, liftIn))
}

/** A lift that was worked out, and is an end of the span but for its last binary digit, is that end. */
const roundingIn = 1e-9

function withoutRounding(curve: FlowCurve, liftIn: number): number {
  const end = [curve[0], curve[curve.length - 1]].find(
    (knot) => knot !== undefined && Math.abs(knot.liftIn - liftIn) <= roundingIn,
  )
  return end?.liftIn ?? liftIn
}

function hermite(a: CurveKnot, b: CurveKnot, liftIn: number): number {
  const h = b.liftIn - a.liftIn
  if (h === 0) return a.flowCfm
  const t = (liftIn - a.liftIn) / h
  const rise = b.flowCfm - a.flowCfm
  return a.flowCfm + rise * t * t * (3 - 2 * t) + h * t * (1 - t) * (a.slope * (1 - t) - b.slope * t)
}

/**
 * Mean flow over a range of lift.
 *
 * @param curve from `monotoneCurve`
 * @param fromIn start of the range, in, inside the measured span
 * @param toIn end of the range, in, above the start, inside the measured span
 * @returns cfm
 *
 * Formula: ∫ Q dL/(L₂ − L₁), each cubic piece by Simpson's rule, which is exact for cubics.
 * Example: a straight line from (0.1, 60) to (0.3, 180), 0.1 to 0.3 in → 120 cfm.
 * Derived: the integral of the curve over its span.
 */
export function meanFlow(curve: FlowCurve, fromIn: number, toIn: number): Result<number> {
  const first = curve[0]?.liftIn ?? Infinity
  const last = curve[curve.length - 1]?.liftIn ?? -Infinity
  if (!(fromIn < toIn)) return refuse('out-of-range', 'A mean needs a range of lift that ends above its start.')
  if (!(fromIn >= first && toIn <= last)) {
    return refuse('out-of-range', `The lifts ${fromIn} to ${toIn} in were not all run.`)
  }
  let area = 0
  curve.slice(1).forEach((b, i) => {
    const a = curve[i] ?? b
    const left = Math.max(fromIn, a.liftIn)
    const right = Math.min(toIn, b.liftIn)
    if (left >= right) return
    const middle = (left + right) / 2
    area += ((right - left) / 6) * (hermite(a, b, left) + 4 * hermite(a, b, middle) + hermite(a, b, right))
  })
  return ok(area / (toIn - fromIn))
}
