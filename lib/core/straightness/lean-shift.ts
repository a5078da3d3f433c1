import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { radians } from '../units/degrees'

/** A shift up to this is smaller than a gauge reads, and nothing is said of it. */
export const leanShiftShownIn = 0.0005

/**
 * How far an angle cut shifts the flat part that the corners give, on a head that already leans, in inches.
 *
 * @param thicknessIn mean thickness at the corners before the cut, 0.3–12 in
 * @param leanDeg how far the deck leaned to the top face before the cut, 0–5°, either way
 * @param cutDeg angle of the cut, 0–5°, either way
 * @returns T·sin Φ·tan φ: not taken off, since it is smaller than most gauges read; shown above 0.5 thou
 *
 * A corner is touched on top; on a leaning head its foot on the deck lies T·sin Φ aside, where the cut is deeper or less
 * deep by tan φ times that. Lean and cut in one direction give a positive figure.
 * Derived: the foot of the plumb line on a leaning deck. Example: 4.5 in, 0.5° and 0.5° → 0.34 thou; 1° and 1° → 1.37
 * thou.
 */
export function leanShiftIn(
  thicknessIn: number | null | undefined,
  leanDeg: number | null | undefined,
  cutDeg: number | null | undefined,
): Result<number> {
  const facts = knownFacts({
    thicknessIn: factOf('thickness', thicknessIn, 'thickness'),
    leanDeg: factOf('lean of the head', leanDeg, 'lean'),
    cutDeg: factOf('angle of the cut', cutDeg, 'lean'),
  })
  if (!facts.ok) return facts
  const { thicknessIn: thickness, leanDeg: lean, cutDeg: cut } = facts.value
  return ok(thickness * Math.sin(radians(lean)) * Math.tan(radians(cut)))
}
