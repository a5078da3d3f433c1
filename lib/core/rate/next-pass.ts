import { knownFacts, type Fact } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ok, refuse, type Result } from '../errors'
import { cutsThatProve, type Rate } from './rate'
import { depthErrorFact, rateFacts, uncertaintyFact } from './rate-facts'

/** What a safe depth rests on. */
export type HeadAtPass = {
  /** Mean of the chambers now, and its standard uncertainty. */
  readonly presentCc: number
  readonly uPresentCc: number
  /** How the mean goes together with the rate: their covariance, never above 0; left out: not at all. */
  readonly covCcPerThou?: number
  /** This head's rate (`rateForHead`, and what its own cut taught on top). */
  readonly rate: Rate
  /** Where the class has a smallest chamber: the head's smallest, and the least that is allowed. */
  readonly smallest?: {
    readonly cc: number
    readonly uCc: number
    readonly covCcPerThou?: number
    readonly classMinimumCc: number
  } | null
}

export type PassInput = HeadAtPass & {
  /** What the cut shall leave, net of what seat work to come will add. */
  readonly targetCc: number
  readonly toleranceCc: number
  /** Standard uncertainty of a depth setting; default 0.5. */
  readonly depthErrorThou?: number
  /** The same head by the rates of cuts that were screened: each may be the truth, so the least safe depth counts. */
  readonly ifScreened?: readonly HeadAtPass[]
  /** Nothing of this head was cut and read yet; left out: so it is. */
  readonly firstPass?: boolean
  /** The newest cuts of the record disagree with it. */
  readonly doubted?: boolean
}

/** What sets the depth: the target itself, or what would else be at risk. */
export type PassBound = 'nominal' | 'tolerance' | 'class-minimum' | 'unproven' | 'screened' | 'doubted'

export type Pass = {
  readonly kind: 'pass'
  /** Cut this much now. */
  readonly depthThou: number
  /** The whole way to the target, by the rate as it is believed. */
  readonly nominalThou: number
  readonly isNominal: boolean
  readonly bound: PassBound
  /** What the pass should leave, mean of the chambers. */
  readonly leavesCc: number
  readonly why: string
}
export type NoPass = { readonly kind: 'none'; readonly why: string }

/**
 * How well the smallest chamber must be known, in cc, for half a thou to be safe against the class minimum.
 *
 * @param roomCc the smallest chamber less the minimum, in cc
 * @returns the largest u; null when no reading helps: the mill and the rate alone take more than the room
 *
 * room − k·½ ≥ z·√(u² + (u_k·½)² + (k·u_d)² + (u_k·u_d)²). Example: 0.5 cc of room at 1/6 ± 0.002, half a thou → 0.137.
 * Derived: the safe depth of `advisePass`, solved for u at half a thou.
 */
export function smallestKnownTo(roomCc: number, rate: Rate, depthErrorThou = 0.5): number | null {
  const { ccPerThou: k, uCcPerThou: uK } = rate
  const leftCc = (roomCc - k * stepThou) / zOfHalfAPercent
  const taken = Math.hypot(uK * stepThou, k * depthErrorThou, uK * depthErrorThou)
  return leftCc > taken ? Math.sqrt((leftCc - taken) * (leftCc + taken)) : null
}

/** Of a standard normal variable, 0.5 % lies below −2.5758 (any normal table). */
const zOfHalfAPercent = 2.5758293

/** A tolerance must be this many times what the cc are known to, or no pass is advised. */
export const toleranceInU = 2.5

/** A mill is set to half a thou. */
const stepThou = 0.5
const deepestThou = 500
/** Decimals are not exact in binary. */
const rounding = 1e-9

/**
 * How deep the next flat pass may go, so that no chamber metal goes that cannot be put back.
 *
 * @param input cc 1–400, uncertainties 0–20 cc, tolerance 0.01–50 cc, depth error 0–20 thou
 * @returns the pass, rounded down to half a thou; or none, when there is nothing to take; refused with `hold` when the
 *   head is already under its tolerance, with `measure-again` when the tolerance is less than 2.5·u_V, with
 *   `unreachable` when the smallest pass would put the tolerance or the class minimum at risk
 *
 * Assumes normal errors of cc, depth and rate, and a wall square to the deck over the depth of one pass. Nominal depth
 * (V − T)/k. Safe depth: the largest d with P(V − k·(d + error) < T − t) ≤ 0.5 %; the same for the smallest chamber
 * against the class minimum, and by the rate of each screened cut. A rate that began on nothing, and a first pass on a
 * record in doubt, goes no deeper than half the nominal: a head whose truth is 4.7 thou per cc would be scrapped by a
 * confident 6.
 * Example: 63.0 ± 0.1 cc to 60.0 ± 0.5 cc at 0.1667 ± 0.0097 cc per thou: nominal 18 thou, advised 17.5, leaves 60.1.
 * Derived: the depth at which the chance of passing the tolerance is one in two hundred, errors taken as normal.
 */
export function advisePass(input: PassInput): Result<Pass | NoPass> {
  const facts = passFacts(input)
  if (!facts.ok) return facts
  const { presentCc, uPresentCc, targetCc, toleranceCc, ccPerThou } = facts.value
  const stop = belowTarget(input)
  if (stop) return stop
  if (toleranceCc < toleranceInU * uPresentCc - rounding) {
    return refuse(
      'measure-again',
      `The cc readings are good to ${cc(uPresentCc)}, not enough for a tolerance of ${cc(toleranceCc)}. Read every chamber at least twice.`,
    )
  }
  const nominal = (presentCc - targetCc) / ccPerThou
  if (nominal > deepestThou) {
    return refuse('unreachable', `The target would take ${Math.round(nominal)} thou, more than any head allows.`)
  }
  const { depth, bound } = deepest(input, nominal)
  const depthThou = roundDown(depth)
  if (depthThou === 0) return nothingToTake(input, bound)
  const pass = { depthThou, nominalThou: roundDown(nominal), bound, isNominal: bound === 'nominal' }
  const leavesCc = presentCc - ccPerThou * depthThou
  return ok({ kind: 'pass', ...pass, leavesCc, why: reason(input, pass, leavesCc) })
}

function passFacts(input: PassInput) {
  for (const head of input.ifScreened ?? []) {
    const facts = knownFacts(factsOfHead(head))
    if (!facts.ok) return facts
  }
  return knownFacts({
    ...factsOfHead(input),
    targetCc: factOf('target in cc', input.targetCc, 'chamberVolume'),
    toleranceCc: ['tolerance in cc', input.toleranceCc, 0.01, 50],
    depthErrorThou: depthErrorFact(input.depthErrorThou ?? 0.5),
  })
}

function factsOfHead(head: HeadAtPass) {
  const smallest = head.smallest ?? { cc: 1, uCc: 0, classMinimumCc: 1 }
  return {
    presentCc: factOf('mean of the chambers in cc', head.presentCc, 'chamberVolume'),
    uPresentCc: uncertaintyFact('uncertainty of the mean', head.uPresentCc),
    covCcPerThou: covarianceFact(head.covCcPerThou),
    ...rateFacts(head.rate),
    smallestCc: factOf('smallest chamber in cc', smallest.cc, 'chamberVolume'),
    uSmallestCc: uncertaintyFact('uncertainty of the smallest chamber', smallest.uCc),
    smallestCovCcPerThou: covarianceFact(smallest.covCcPerThou),
    classMinimumCc: factOf('class minimum in cc', smallest.classMinimumCc, 'chamberVolume'),
  } as const
}

/** What a chamber lost and what a thou takes go against each other, so this is never above 0. */
const covarianceFact = (covCcPerThou = 0): Fact => ['chambers against the rate', covCcPerThou, -200, 0]

/** Nothing to cut: at the target, or already past what may go. */
function belowTarget({ presentCc, targetCc, toleranceCc, smallest }: PassInput): Result<NoPass> | null {
  if (smallest && smallest.cc < smallest.classMinimumCc) {
    return refuse(
      'hold',
      `The smallest chamber reads ${cc(smallest.cc)}, under the class minimum of ${cc(smallest.classMinimumCc)}: stop and get the owner.`,
    )
  }
  if (presentCc < targetCc - toleranceCc) {
    return refuse(
      'hold',
      `The chambers read ${cc(presentCc)}, more than ${cc(toleranceCc)} under the target of ${cc(targetCc)}: stop and get the owner.`,
    )
  }
  if (presentCc > targetCc) return null
  return ok({
    kind: 'none',
    why: `The chambers read ${cc(presentCc)}; the target is ${cc(targetCc)}: nothing to take.`,
  })
}

type Bounded = { readonly depth: number; readonly bound: PassBound }

/** The deepest pass that neither passes the target nor puts anything at risk, and what sets it. */
function deepest(input: PassInput, nominal: number): Bounded {
  const { rate, ifScreened = [], firstPass = true, doubted = false } = input
  const bounds: Bounded[] = [
    { depth: nominal, bound: 'nominal' },
    ...safeDepths(input, input),
    ...ifScreened.flatMap((head) => safeDepths(input, head).map((one) => ({ ...one, bound: 'screened' as const }))),
  ]
  const unproven = rate.prior === 'none' && rate.cuts < cutsThatProve
  if (firstPass && unproven) bounds.push({ depth: nominal / 2, bound: 'unproven' })
  if (firstPass && doubted) bounds.push({ depth: nominal / 2, bound: 'doubted' })
  // What rounds to the same half thou does not bind: the earlier, milder reason is given.
  return bounds.reduce((least, one) => (roundDown(one.depth) < roundDown(least.depth) ? one : least))
}

/** How deep the tolerance allows, and the class minimum where there is one, by one account of the head. */
function safeDepths({ targetCc, toleranceCc, depthErrorThou }: PassInput, head: HeadAtPass): Bounded[] {
  const { presentCc, uPresentCc, covCcPerThou = 0, smallest, rate } = head
  const safe = (roomCc: number, uCc: number, cov: number): number =>
    safeDepth({ rate, depthErrorThou, roomCc, uCc, covCcPerThou: cov })
  const tolerance = safe(presentCc - (targetCc - toleranceCc), uPresentCc, covCcPerThou)
  const bounds: Bounded[] = [{ depth: tolerance, bound: 'tolerance' }]
  if (smallest) {
    const roomCc = smallest.cc - smallest.classMinimumCc
    bounds.push({ depth: safe(roomCc, smallest.uCc, smallest.covCcPerThou ?? 0), bound: 'class-minimum' })
  }
  return bounds
}

type Room = {
  readonly rate: Rate
  readonly depthErrorThou?: number
  readonly roomCc: number
  readonly uCc: number
  readonly covCcPerThou: number
}

/**
 * The largest d with P(room − k·(d + error) < 0) ≤ 0.5 %: room − k·d = z·√(u² − 2·d·c + (u_k·d)² + (k·u_d)² + (u_k·u_d)²), c the
 * covariance of volume and rate, solved for d in the form that stays finite when the rate is poorly known.
 */
function safeDepth({ rate, depthErrorThou = 0.5, roomCc, uCc, covCcPerThou: c }: Room): number {
  const { ccPerThou: k, uCcPerThou: uK } = rate
  const fixed = zOfHalfAPercent * Math.hypot(uCc, k * depthErrorThou, uK * depthErrorThou)
  if (roomCc <= fixed) return 0
  const spare = (roomCc - fixed) * (roomCc + fixed)
  const z2c = zOfHalfAPercent ** 2 * c
  const under = (zOfHalfAPercent * uK) ** 2 * spare + (k * fixed) ** 2 - 2 * roomCc * k * z2c + z2c ** 2
  return spare / (roomCc * k - z2c + Math.sqrt(under))
}

function nothingToTake(input: PassInput, bound: PassBound): Result<NoPass> {
  const { presentCc, targetCc, toleranceCc } = input
  if (presentCc <= targetCc + toleranceCc) {
    return ok({
      kind: 'none',
      why: `The chambers read ${cc(presentCc)}, within ${cc(toleranceCc)} of ${cc(targetCc)}: another pass could go past the target.`,
    })
  }
  return refuse(
    'unreachable',
    bound === 'class-minimum'
      ? `No pass is safe: the smallest chamber would be at risk of going under the class minimum. Open the rest, or ask the owner.`
      : `No pass is safe: half a thou could already go more than ${cc(toleranceCc)} under the target.`,
  )
}

function reason(input: PassInput, pass: Omit<Pass, 'kind' | 'leavesCc' | 'why'>, leavesCc: number): string {
  const leaves = `should leave ${cc(leavesCc)}`
  const least = cc(input.targetCc - input.toleranceCc)
  switch (pass.bound) {
    case 'nominal':
      return `${pass.depthThou} thou is the whole way to the target and ${leaves}.`
    case 'tolerance':
      return `${pass.depthThou} thou now, ${leaves}; all ${pass.nominalThou} at once could go under ${least}. Then measure again.`
    case 'class-minimum':
      return `${pass.depthThou} thou now, ${leaves}; more could take the smallest chamber under the class minimum. Then measure again.`
    case 'screened':
      return `${pass.depthThou} thou now, ${leaves}: a cut of this casting took another rate and is not answered for. Then measure again.`
    case 'doubted':
      return `${pass.depthThou} thou now, ${leaves}: the newest cuts disagree with the record, so no more than half of ${pass.nominalThou}. Then measure again.`
    case 'unproven':
      return `${pass.depthThou} thou now, ${leaves}: no cut of this casting is behind the rate yet, so no more than half of ${pass.nominalThou}. Then measure again.`
  }
}

/** The tiny addition keeps 17.999999999 that is meant as 18 from losing half a thou. */
const roundDown = (thou: number) => Math.floor(thou / stepThou + 1e-9) * stepThou

const cc = (value: number) => `${value.toFixed(value < 1 ? 2 : 1)} cc`
