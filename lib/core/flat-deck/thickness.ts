import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'

const inches = (value: number): string => `${value.toFixed(4)} in`
const rounding = 1e-9

/**
 * Depth of the flat cut that leaves a head at a wanted thickness at its thinnest corner, in inches.
 *
 * @param thinnestIn thinnest corner now, 0.3–12 in; @param wantedIn 0.3–12 in
 * @returns 0–0.5 in; refused as `unreachable` when it is that thin already, or deeper than any head allows
 *
 * depth = thinnest − wanted. Example: 4.1320 now, 4.1200 wanted → 0.0120.
 * Derived: a flat cut takes the same everywhere.
 */
export function depthToThickness(
  thinnestIn: number | null | undefined,
  wantedIn: number | null | undefined,
): Result<number> {
  const facts = knownFacts({
    thicknessIn: factOf('thickness now', thinnestIn, 'thickness'),
    wantedThicknessIn: factOf('wanted thickness', wantedIn, 'thickness'),
  })
  if (!facts.ok) return facts
  const { thicknessIn, wantedThicknessIn } = facts.value
  const depthIn = thicknessIn - wantedThicknessIn
  if (depthIn <= rounding) {
    return refuse(
      'unreachable',
      `The head is ${inches(thicknessIn)} thick at its thinnest corner and ${inches(wantedThicknessIn)} is wanted: there is nothing to cut.`,
    )
  }
  if (depthIn <= quantities.cutDepth.most + rounding) return ok(Math.min(depthIn, quantities.cutDepth.most))
  return refuse('unreachable', `The cut would be ${depthIn.toFixed(3)} in deep: more than any head allows.`)
}
