/** What a set of repeats says of the spread of one reading. */
export type RepeatTally = {
  /** Σ(x − x̄)², in cc². */
  readonly squaresCc2: number
  /** Degrees of freedom: readings less one. */
  readonly degrees: number
}

/** What the shop knows of the spread of one reading, before a chamber's own repeats are asked. */
export type Repeatability = {
  /** s₀: standard deviation of one reading, in cc. */
  readonly sCc: number
  /** ν₀: how many degrees of freedom it counts for when repeats are pooled with it. */
  readonly degrees: number
  /** Nothing of the shop's own is behind it yet. */
  readonly isDefault: boolean
}

export const noRepeats: RepeatTally = { squaresCc2: 0, degrees: 0 }

/** Below this the shop's own repeats say too little of how it reads; from it on s₀ counts for as much. */
const learnedDegrees = 10
/** What the customary figure counts for. */
const defaultDegrees = 3

/**
 * Repeats of one chamber by one person with one burette, as a tally.
 *
 * @param readingsCc in cc
 * @returns Σ(x − x̄)² in cc² and n − 1; nothing for none
 *
 * Example: 62.1, 62.3 → 0.02 cc² with one degree of freedom. Derived: the sum of squares about the mean.
 */
export function tallyOf(readingsCc: readonly number[]): RepeatTally {
  if (readingsCc.length < 2) return noRepeats
  // Taken from the first, so that large figures that lie close together lose nothing.
  const [first = 0] = readingsCc
  const offs = readingsCc.map((cc) => cc - first)
  const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length
  return { squaresCc2: offs.reduce((sum, off) => sum + (off - mean) ** 2, 0), degrees: readingsCc.length - 1 }
}

/**
 * Several tallies as one, in cc² and degrees of freedom.
 *
 * Example: 0.02 with 1 and 0.06 with 2 → 0.08 with 3. Derived: squares and degrees of freedom add.
 */
export const sumOfTallies = (tallies: readonly RepeatTally[]): RepeatTally =>
  tallies.reduce(
    (sum, one) => ({ squaresCc2: sum.squaresCc2 + one.squaresCc2, degrees: sum.degrees + one.degrees }),
    noRepeats,
  )

/**
 * The spread of one reading in this shop, in cc.
 *
 * @param shop all repeats of the shop but those of the chamber at hand, in cc²
 * @param defaultCc what is customary until there are ten degrees of freedom, 0–20 cc [common practice: 0.3]
 *
 * s₀ = √(Σ squares/Σ degrees), counting for ten degrees; before that the default, counting for three.
 * Example: 0.9 cc² with 10 → 0.3 cc; with 9 degrees the default. Source: JCGM 100:2008 (GUM) 4.2.4, pooled estimate.
 */
export function repeatabilityOf(shop: RepeatTally, defaultCc: number): Repeatability {
  if (shop.degrees < learnedDegrees) return { sCc: defaultCc, degrees: defaultDegrees, isDefault: true }
  return { sCc: Math.sqrt(shop.squaresCc2 / shop.degrees), degrees: learnedDegrees, isDefault: false }
}

/**
 * The spread of one reading, with what the chamber's own repeats say of it: s_p, in cc.
 *
 * @param own the chamber's repeats, in cc²
 * @param shop what the shop knows without them, in cc
 *
 * s_p² = (ν₀·s₀² + Σ(x − x̄)²)/(ν₀ + n − 1); a default is a floor, so that two readings that happen to agree do not make a
 * burette better than it is. Source: JCGM 100:2008 (GUM) 4.2.4.
 * Example: default 0.3 and readings 0.6 apart → √((3·0.09 + 0.18)/4) = 0.335; 0.2 apart → 0.3.
 */
export function pooledSpreadCc(own: RepeatTally, shop: Repeatability): number {
  const pooled = Math.sqrt((shop.degrees * shop.sCc ** 2 + own.squaresCc2) / (shop.degrees + own.degrees))
  return shop.isDefault ? Math.max(shop.sCc, pooled) : pooled
}

/** A repeat this many standard deviations off is questioned. */
const wild = 3

export type WildRepeat = {
  /** Mean of the readings before it. */
  readonly meanCc: number
  /** How far it lies from that. */
  readonly offCc: number
  readonly limitCc: number
}

/**
 * Whether a repeat lies too far from those before it to be averaged unasked.
 *
 * @param newCc the repeat, in cc
 * @param beforeCc the readings that stand, in cc; none: there is nothing to hold it against
 * @param sCc s₀, spread of one reading in this shop, in cc
 * @returns null when it is an ordinary repeat
 *
 * Questioned when |x − x̄| > 3·s₀·√(1 + 1/m), m readings before. Example: 63.9, then 62.6 with s₀ 0.3 → 1.3 is over
 * 3·0.3·√2 = 1.273. Derived: the difference of a reading and the mean of m others has s₀²·(1 + 1/m) as its variance.
 */
export function wildRepeat(newCc: number, beforeCc: readonly number[], sCc: number): WildRepeat | null {
  const [first] = beforeCc
  if (first === undefined) return null
  const meanCc = first + beforeCc.reduce((sum, cc) => sum + (cc - first), 0) / beforeCc.length
  const offCc = newCc - meanCc
  const limitCc = wild * sCc * Math.sqrt(1 + 1 / beforeCc.length)
  return Math.abs(offCc) > limitCc + rounding ? { meanCc, offCc, limitCc } : null
}

/** Decimals are not exact in binary. */
const rounding = 1e-9
