import { knownFacts } from '../known-facts'
import { ok, type Result } from '../errors'
import { factOf } from '../units/fact-of'

export type SpringFit = {
  /** Valve shut, retainer to seal. */
  readonly retainerToSealIn: number | null | undefined
  /** With the shims in. */
  readonly installedHeightIn: number | null | undefined
  readonly coilBindIn: number | null | undefined
  /** At zero lash. */
  readonly liftIn: number | null | undefined
  readonly retainerMarginIn: number
  readonly coilBindMarginIn: number
}

export type UsableLift = {
  /** Below zero: none at all. */
  readonly usableIn: number
  readonly boundBy: 'retainer' | 'coil-bind'
  /** What is left over the valve's lift; below zero: it hits. */
  readonly spareIn: number
  readonly enough: boolean
}

/** Typed decimals: a difference of a billionth of an inch was not meant. */
const hair = 1e-9

/**
 * How far a valve may open before retainer or spring stops it, in inches.
 *
 * @param fit retainer to seal −0.5–2 in, heights 0.5–4 in, lift 0–2 in, margins 0–0.5 in
 * @returns the lesser of both, what sets it, and what is left over the lift; refused when a figure is missing
 *
 * The least of (retainer to seal − margin) and (installed height − coil bind − margin). Customary margins 0.050 and 0.060
 * in, from memory; the spring maker's figures go first.
 * Derived: the first of two stops that a valve meets.
 * Example: 0.642 less 0.050; 1.800 − 1.060 less 0.060 → 0.592, by the retainer; lift 0.550 leaves 0.042.
 */
export function usableLift(fit: SpringFit): Result<UsableLift> {
  const facts = knownFacts({
    retainerToSealIn: factOf('retainer to seal', fit.retainerToSealIn, 'clearance'),
    installedHeightIn: factOf('installed height', fit.installedHeightIn, 'height'),
    coilBindIn: factOf('spring height at coil bind', fit.coilBindIn, 'height'),
    liftIn: factOf('valve lift', fit.liftIn, 'lift'),
    retainerMarginIn: factOf('margin at the retainer', fit.retainerMarginIn, 'depth'),
    coilBindMarginIn: factOf('margin before coil bind', fit.coilBindMarginIn, 'depth'),
  })
  if (!facts.ok) return facts
  const { retainerToSealIn, installedHeightIn, coilBindIn, liftIn, retainerMarginIn, coilBindMarginIn } = facts.value
  const byRetainer = retainerToSealIn - retainerMarginIn
  const bySpring = installedHeightIn - coilBindIn - coilBindMarginIn
  const usableIn = Math.min(byRetainer, bySpring)
  const spareIn = usableIn - liftIn
  const boundBy = byRetainer <= bySpring ? 'retainer' : 'coil-bind'
  return ok({ usableIn, boundBy, spareIn, enough: spareIn >= -hair })
}
