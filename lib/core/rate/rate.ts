import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ccPerIn3 } from '../units/factors'
import { ok, type Result } from '../errors'

/** What a first guess of a rate rests on; `none`: on nothing but the trade's usual figure. */
export type PriorKind = 'outline' | 'perimeter' | 'none'

/** How much chamber volume a thou of depth at the chamber's centroid takes, and how well that is known. */
export type Rate = {
  readonly ccPerThou: number
  /** One standard deviation, in cc per thou. */
  readonly uCcPerThou: number
  /** Cuts of the shop's own that stand behind it. */
  readonly cuts: number
  readonly prior: PriorKind
  /** k₀: what the record gave before any cut, which stands in every variance so that the order of cuts does not matter. */
  readonly firstGuessCcPerThou?: number
}

/**
 * k₀ of a rate, in cc per thou: what was believed before any cut. Example: 0.1667 learned to 0.1653 → 0.1667.
 * Derived: the prior's own mean; a rate that was given as it is stands for itself.
 */
export const firstGuessOf = (rate: Rate): number => rate.firstGuessCcPerThou ?? rate.ccPerThou

/** A rate is never known better than to this part of itself: no burette and no mill shows less. */
const leastPart = 0.001

/**
 * Standard uncertainty of a rate, in cc per thou, but no less than 0.1 % of its first guess: it is never nought.
 * Example: 0 with a first guess of 0.2 → 0.0002. Derived: the larger of the two.
 */
export const flooredU = (uCcPerThou: number, firstGuessCcPerThou: number): number =>
  Math.max(uCcPerThou, leastPart * firstGuessCcPerThou)

export type PriorSource =
  | { readonly kind: 'outline'; readonly openingAreaIn2: number | null }
  | { readonly kind: 'perimeter'; readonly perimeterIn: number | null }
  /** A figure the shop goes by, if it has one; else the trade's six thou per cc. */
  | { readonly kind: 'none'; readonly thouPerCc?: number | null }

/** Standard uncertainty of each first guess, as a part of it [common practice]. */
export const priorUncertaintyPart: Readonly<Record<PriorKind, number>> = {
  outline: 0.05,
  perimeter: 0.15,
  none: 0.25,
}

/** About 0.006 in per cc is usual on small wedge chambers [common practice]. */
export const usualThouPerCc = 6

/** Cuts that must stand behind a rate that began on nothing, before it may be believed. */
export const cutsThatProve = 2

/**
 * The rate before any cut of the shop's own.
 *
 * @param source the traced opening area in square inches (0.5–40), the chamber's perimeter in inches (1–40), or neither
 * @returns cc per thou with its standard uncertainty: 5 % from an outline, 15 % from a perimeter, 25 % from neither
 *
 * Assumes a chamber wall square to the deck. Outline: k = 16.387064·A/1000. Perimeter: k = (perimeter/π)²·12.87/1000
 * (Source: Eaton Balancing, Jan 2013), which takes the outline for a circle and so overstates the area. Neither: 1/6.
 * Example: A = 10.1706 in² → 0.16667 cc per thou, that is 6.0 thou per cc.
 */
export function priorRate(source: PriorSource): Result<Rate> {
  const k = firstGuess(source)
  if (!k.ok) return k
  const uCcPerThou = k.value * priorUncertaintyPart[source.kind]
  return ok({ ccPerThou: k.value, uCcPerThou, cuts: 0, prior: source.kind, firstGuessCcPerThou: k.value })
}

function firstGuess(source: PriorSource): Result<number> {
  switch (source.kind) {
    case 'outline': {
      const facts = knownFacts({ openingAreaIn2: factOf('opening area', source.openingAreaIn2, 'area') })
      return facts.ok ? ok((ccPerIn3 * facts.value.openingAreaIn2) / 1000) : facts
    }
    case 'perimeter': {
      const facts = knownFacts({ perimeterIn: factOf('chamber perimeter', source.perimeterIn, 'perimeter') })
      return facts.ok ? ok(((facts.value.perimeterIn / Math.PI) ** 2 * 12.87) / 1000) : facts
    }
    case 'none': {
      const facts = knownFacts({ thouPerCc: factOf('thou per cc', source.thouPerCc ?? usualThouPerCc, 'thouPerCc') })
      return facts.ok ? ok(1 / facts.value.thouPerCc) : facts
    }
  }
}

/**
 * The rate of one head that has not been cut yet: heads of one casting differ, so its own rate is known less well than
 * the casting's.
 *
 * @param rate the casting's rate, in cc per thou
 * @param betweenHeadPart spread between heads as a part of the first guess (default 0.03, shop setting)
 *
 * u_k² = posterior² + τ², τ = part·k₀. Example: 0.1667 ± 0.0010 with 3 % between heads → 0.1667 ± 0.0051.
 * What this head then shows by its own cut is learned on top: `headEstimate`.
 * Derived: independent uncertainties add in squares.
 */
export function rateForHead(rate: Rate, betweenHeadPart = 0.03): Rate {
  return { ...rate, uCcPerThou: Math.hypot(rate.uCcPerThou, betweenHeadPart * firstGuessOf(rate)) }
}

/**
 * The rate as machinists say it, in thou per cc, and its standard uncertainty: 1/k and u/k².
 * Derived: the reciprocal, and its first-order uncertainty. Example: 0.1667 ± 0.0010 → 6.00 ± 0.036 thou per cc.
 */
export function thouPerCc(rate: Rate): { readonly thouPerCc: number; readonly uThouPerCc: number } {
  return { thouPerCc: 1 / rate.ccPerThou, uThouPerCc: rate.uCcPerThou / rate.ccPerThou ** 2 }
}
