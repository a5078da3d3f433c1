import type { ChamberMean } from '../chamber/burette'
import { knownFacts } from '../known-facts'
import { firstGuessOf, flooredU, type Rate } from '../rate/rate'
import { depthErrorFact, rateFacts, uncertaintyFact } from '../rate/rate-facts'
import type { KnownCc } from '../rate/shop-cut'
import { factOf } from '../units/fact-of'

/** One chamber of a head: what it held before the cut, and what was read since. */
export type ChamberAcross = {
  /** By its number. */
  readonly chamber: string
  readonly before: Pick<ChamberMean, 'meanCc' | 'uCc'>
  /** Null: not read since the last cut. */
  readonly since: Pick<ChamberMean, 'meanCc' | 'uCc'> | null
}

export type HeadAcross = {
  readonly chambers: readonly ChamberAcross[]
  /** Depth at the chamber's centroid of all that was cut, in thou; 0: nothing. */
  readonly depthThou: number
  /** Standard uncertainty of that depth, in thou. */
  readonly uDepthThou: number
  /** Of this head before its own cut (`rateForHead`). */
  readonly rate: Rate
}

/** A volume with its standard uncertainty, and how it goes together with the rate: their covariance, in cc·(cc per thou). */
export type CcWithRate = KnownCc & { readonly covCcPerThou: number }

export type HeadEstimate = {
  /** Mean of the chambers now. */
  readonly mean: CcWithRate
  readonly chambers: readonly (CcWithRate & { readonly chamber: string })[]
  /** With what this head's own cut taught. */
  readonly rate: Rate
}

/**
 * What a head holds now and what its cut says of its rate, in cc: both worked out at once, since what a chamber lost says
 * something of either.
 *
 * @param head depths 0–500 thou, cc 1–400, uncertainties 0–20 cc
 * @returns null without a chamber, and when a figure lies outside those limits
 *
 * Unknown: each chamber before, B_i (read: b_i ± u_i), the rate k (k̂ ± u_k) and the error e of the depth (0 ± u_d). A
 * chamber read since says a_i = B_i − k·d − k₀·e ± u_a; all chambers lose alike. Means and covariances of the linear
 * normal model, one reading weighed in after the other. What it holds now is B_i − k·d − k₀·e.
 * Example: one chamber 64.0 ± 0.3, 10 thou at 0.16 ± 0.01, no depth error, then 62.8 ± 0.3 → drop 1.2 ± 0.424 read,
 * 1.6 ± 0.1 believed: k = 0.16 − 0.01²·10·0.4/(0.19) = 0.1579.
 * Derived: least squares of all that was read and believed, weights 1/variance.
 */
export function headEstimate(head: HeadAcross): HeadEstimate | null {
  const { chambers, depthThou, uDepthThou, rate } = head
  if (chambers.length === 0 || !isPossible(head)) return null
  const rows = chambers.map((_, at) => lossRow(head, at))
  const model = chambers.reduce(
    (so, { since }, at) => (since ? weighIn(so, rows[at] ?? [], since) : so),
    believed(chambers, rate, depthThou > 0 ? uDepthThou : 0),
  )
  const each = rows.map((row, at) => {
    const { cc, uCc, covCcPerThou } = read(model, row)
    return { chamber: chambers[at]?.chamber ?? '', cc, uCc, covCcPerThou }
  })
  const whole = (rows[0] ?? []).map((_, column) => rows.reduce((sum, row) => sum + (row[column] ?? 0), 0) / rows.length)
  return { mean: read(model, whole), chambers: each, rate: rateOf(model, rate, chambers, depthThou) }
}

function isPossible({ chambers, depthThou, uDepthThou, rate }: HeadAcross): boolean {
  const isRead = ({ meanCc, uCc }: ChamberAcross['before']): boolean =>
    knownFacts({ cc: factOf('chamber', meanCc, 'chamberVolume'), uCc: uncertaintyFact('its uncertainty', uCc) }).ok
  const cut = knownFacts({
    depthThou: ['depth in thou', depthThou, 0, 500],
    uDepthThou: depthErrorFact(uDepthThou),
    ...rateFacts(rate),
    firstGuess: ['first guess of the rate', firstGuessOf(rate), 1e-6, 10],
  })
  return cut.ok && chambers.every(({ before, since }) => isRead(before) && (since === null || isRead(since)))
}

/** Means and covariances of: each chamber before, the rate, the error of the depth. */
type Model = { readonly means: readonly number[]; readonly cov: readonly (readonly number[])[] }

function believed(chambers: readonly ChamberAcross[], rate: Rate, uDepthThou: number): Model {
  const us = [...chambers.map(({ before }) => before.uCc), rate.uCcPerThou, uDepthThou]
  return {
    means: [...chambers.map(({ before }) => before.meanCc), rate.ccPerThou, 0],
    cov: us.map((u, row) => us.map((_, column) => (row === column ? u ** 2 : 0))),
  }
}

/** How what chamber `at` holds now is made of the unknowns. */
function lossRow({ chambers, depthThou, rate }: HeadAcross, at: number): readonly number[] {
  const lost = depthThou > 0 ? [-depthThou, -firstGuessOf(rate)] : [0, 0]
  return [...chambers.map((_, place) => (place === at ? 1 : 0)), ...lost]
}

/** A billionth of a cc, squared: below it nothing is uncertain. */
const leastVariance = 1e-18

// Loops by index here and below: how often a head must still be read is found by hundreds of these.
function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0
  for (let at = 0; at < a.length; at++) sum += (a[at] ?? 0) * (b[at] ?? 0)
  return sum
}

/** One reading weighed in by the inverse of the variances. */
function weighIn(model: Model, row: readonly number[], since: Pick<ChamberMean, 'meanCc' | 'uCc'>): Model {
  const { means, cov } = model
  const with_ = times(cov, row)
  const variance = dot(row, with_) + since.uCc ** 2
  // Both certain: there is nothing to weigh.
  if (!(variance > leastVariance)) return model
  const off = (since.meanCc - dot(row, means)) / variance
  return {
    means: plus(means, off, with_),
    cov: cov.map((line, at) => plus(line, -(with_[at] ?? 0) / variance, with_)),
  }
}

function times(matrix: readonly (readonly number[])[], column: readonly number[]): number[] {
  const product: number[] = []
  for (const line of matrix) product.push(dot(line, column))
  return product
}

/** a + factor·b. */
function plus(a: readonly number[], factor: number, b: readonly number[]): number[] {
  const sum: number[] = []
  for (let at = 0; at < a.length; at++) sum.push((a[at] ?? 0) + factor * (b[at] ?? 0))
  return sum
}

function read({ means, cov }: Model, row: readonly number[]): CcWithRate {
  const with_ = times(cov, row)
  return {
    cc: dot(row, means),
    // What rounding leaves of nothing may lie a hair below it.
    uCc: Math.sqrt(Math.max(0, dot(row, with_))),
    covCcPerThou: Math.min(0, with_.at(-2) ?? 0),
  }
}

/** A rate that a reading would turn negative stays what it was: that cut is asked about, not learned from. */
function rateOf({ means, cov }: Model, rate: Rate, chambers: readonly ChamberAcross[], depthThou: number): Rate {
  const learned = means.at(-2) ?? 0
  if (depthThou <= 0 || !(learned > 0) || chambers.every(({ since }) => since === null)) return rate
  const firstGuess = firstGuessOf(rate)
  const variance = Math.max(0, cov.at(-2)?.at(-2) ?? 0)
  return {
    ...rate,
    ccPerThou: learned,
    uCcPerThou: flooredU(Math.sqrt(variance), firstGuess),
    cuts: rate.cuts + 1,
    firstGuessCcPerThou: firstGuess,
  }
}
