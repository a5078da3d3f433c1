import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import type { PlaneFit } from './plane-fit'

/** What was wanted, or what somebody's marks on the head say; null: not said. */
export type WantedCut = { readonly flatIn: number | null; readonly angleIn: number | null }

export type CutDifference = {
  readonly part: 'flat' | 'angle' | 'taper'
  readonly wantedIn: number
  readonly measuredIn: number
  /** Positive: more was taken than wanted. */
  readonly differenceIn: number
  readonly within: boolean
}

/**
 * What a cut did, held against the plan or against the vendor's marks.
 *
 * @param wanted parts of the cut in inches; a part that is not said is not compared; taper is always wanted at zero
 * @param toleranceIn 0–0.1 in, for each part
 *
 * Example: planned flat 0.020, measured 0.023, tolerance 0.002 → 0.003 too deep, out.
 */
export function compareCut(
  fit: PlaneFit,
  wanted: WantedCut,
  toleranceIn: number,
): Result<readonly CutDifference[]> {
  const facts = knownFacts({
    toleranceIn: ['tolerance of the cut', toleranceIn, 0, 0.1],
    flatIn: ['flat part wanted', wanted.flatIn ?? 0, -0.5, 0.5],
    angleIn: ['angle part wanted', wanted.angleIn ?? 0, -0.5, 0.5],
  })
  if (!facts.ok) return facts
  const compare = (part: CutDifference['part'], measuredIn: number, wantedIn: number | null) => {
    if (wantedIn === null) return []
    const differenceIn = measuredIn - wantedIn
    // A difference that reads as the tolerance is within it, whatever the last binary digit says.
    return [
      { part, wantedIn, measuredIn, differenceIn, within: Math.abs(differenceIn) <= toleranceIn + 1e-9 },
    ]
  }
  return ok([
    ...compare('flat', fit.flatIn, wanted.flatIn),
    ...compare('angle', fit.angleIn, wanted.angleIn),
    ...compare('taper', fit.taperIn, 0),
  ])
}
