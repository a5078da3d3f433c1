import { ok, refuse, type Result } from '../errors'
import { depthToThickness } from '../flat-deck/thickness'
import type { PlanInput } from './plan-types'
import type { Parts } from './split'

/**
 * The cut of a flat-deck head: flat, to the thickness that is wanted; the thinnest head of a pair decides, so that none
 * ends thinner.
 *
 * @param input thickness now and wanted 0.3–12 in
 * @returns depths in inches; refused as `missing`, or as `unreachable` for an angle: its valves must stay square to the deck
 *
 * Derived: as `depthToThickness`. Example: 4.132 and 4.134 now, 4.120 wanted → 0.012 flat.
 */
export function partsToThickness({ kind, heads, flatDeck }: PlanInput): Result<Parts> {
  if (kind === 'angle' || kind === 'angle-flat') {
    return refuse(
      'unreachable',
      'A flat-deck head is cut flat: an angle would tilt its valves to the deck. Choose a clean-up or a flat cut.',
    )
  }
  const known = heads.flatMap(({ thicknessIn }) => (thicknessIn === null ? [] : [thicknessIn]))
  const thinnestIn = known.length === 0 || known.length < heads.length ? null : Math.min(...known)
  const depthIn = depthToThickness(thinnestIn, flatDeck?.wantedThicknessIn)
  return depthIn.ok ? ok({ flatIn: depthIn.value, angleIn: 0 }) : depthIn
}
