import { knownFacts } from '../known-facts'
import { ok, type Result } from '../errors'
import { factOf } from '../units/fact-of'

export type SpringAsked = {
  /** Pressure on the seat as it is now, and what is wanted, in lbf. */
  readonly seatLbf: number | null | undefined
  readonly wantedLbf: number | null | undefined
  readonly rateLbfPerIn: number | null | undefined
  /** With the shims in that are in now. */
  readonly installedHeightIn: number | null | undefined
  readonly liftIn: number | null | undefined
  /** Thicknesses that the shop has. */
  readonly shimsIn: readonly number[]
}

export type ShimChoice = {
  /** What would give the wanted pressure exactly; below zero: the spring presses too hard already. */
  readonly idealIn: number
  /** None, one or two of the shop's, thinnest first. */
  readonly shimsIn: readonly number[]
  readonly totalIn: number
  readonly installedHeightIn: number
  readonly seatLbf: number
  readonly openLbf: number
}

/** Two stacks equally near differ by rounding alone. */
const hair = 1e-9

/**
 * Which shims bring a spring nearest to a wanted seat pressure, and what follows.
 *
 * @param asked pressures 1–1000 lbf, rate 20–3000 lbf/in, height 0.5–4 in, lift 0–2 in, shims 0.001–0.5 in
 * @returns none, one or two shims, two of one thickness too; of two equally near the thinner; none when less is wanted
 *
 * Ideal (F_wanted − F)/rate. Installed height less the shims; seat pressure F + rate·shims; open pressure that + rate·lift.
 * Derived: a linear spring. Example: 110 lbf, 125 wanted, 400 lbf/in: 0.0375; of 0.015, 0.030, 0.060 nearest is 0.030
 * (0.0075 off; 0.015 + 0.030 as far, the thinner counts) → 122 lbf on the seat.
 */
export function shimChoice(asked: SpringAsked): Result<ShimChoice> {
  const facts = knownFacts({
    seatLbf: factOf('seat pressure', asked.seatLbf, 'springForce'),
    wantedLbf: factOf('wanted seat pressure', asked.wantedLbf, 'springForce'),
    rateLbfPerIn: factOf('spring rate', asked.rateLbfPerIn, 'springRate'),
    installedHeightIn: factOf('installed height', asked.installedHeightIn, 'height'),
    liftIn: factOf('valve lift', asked.liftIn, 'lift'),
    thinnestIn: factOf('thinnest shim', asked.shimsIn.length === 0 ? 0.01 : Math.min(...asked.shimsIn), 'shim'),
    thickestIn: factOf('thickest shim', asked.shimsIn.length === 0 ? 0.01 : Math.max(...asked.shimsIn), 'shim'),
  })
  if (!facts.ok) return facts
  const { seatLbf, wantedLbf, rateLbfPerIn, installedHeightIn, liftIn } = facts.value
  const idealIn = (wantedLbf - seatLbf) / rateLbfPerIn
  const shimsIn = idealIn <= 0 ? [] : nearest(idealIn, asked.shimsIn)
  const totalIn = shimsIn.reduce((sum, shim) => sum + shim, 0)
  const withShims = seatLbf + rateLbfPerIn * totalIn
  return ok({
    idealIn,
    shimsIn,
    totalIn,
    installedHeightIn: installedHeightIn - totalIn,
    seatLbf: withShims,
    openLbf: withShims + rateLbfPerIn * liftIn,
  })
}

/** Stacks from none to two; the first that is nearest counts, thinner ones come first. */
function nearest(idealIn: number, shimsIn: readonly number[]): readonly number[] {
  const sorted = [...new Set(shimsIn)].sort((a, b) => a - b)
  const stacks = [
    [],
    ...sorted.map((shim) => [shim]),
    ...sorted.flatMap((first, at) => sorted.slice(at).map((second) => [first, second])),
  ]
  const total = (stack: readonly number[]) => stack.reduce((sum, shim) => sum + shim, 0)
  return stacks
    .toSorted((a, b) => total(a) - total(b) || a.length - b.length)
    .reduce((best, stack) => (Math.abs(total(stack) - idealIn) < Math.abs(total(best) - idealIn) - hair ? stack : best))
}
