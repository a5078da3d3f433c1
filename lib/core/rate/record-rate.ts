import { ok, type Result } from '../errors'
import { cutsLikeDepth, learnRate, type Scatter } from './learn'
import { firstGuessOf, type Rate } from './rate'
import { screenCuts, screenLimit, type CutToJudge, type JudgedCut } from './screen'

/** What a casting's record says of its rate, and how far it may be trusted. */
export type RecordRate = {
  readonly rate: Rate
  /** One a cut, in the order given. */
  readonly judged: readonly JudgedCut[]
  /** What the cuts say that are asked about, in cc per thou: each may be the truth. */
  readonly screenedCcPerThou: readonly number[]
  /** More than half of the newest cuts disagree with the record: the record itself may be wrong. */
  readonly doubted: boolean
  /** Until a cut made after the doubt agrees, a first pass goes at most half the way. */
  readonly halfFirstPass: boolean
}

/** A record that its own cuts disagree with is known no better than the trade's usual figure. */
const doubtedPart = 0.25
const newestHeads = 5
const fewestHeads = 2

/**
 * The rate of a casting and chamber form, learned from the shop's own cuts of it.
 *
 * @param prior what the casting record gives, in cc per thou
 * @param cuts one a head, by the day of the last pass, oldest first; depths in thou (0.1–500)
 * @param depthThou the depth asked, in thou, so that long cuts do not teach a short one; null: all cuts alike
 * @returns the rate of the cuts that `screenCuts` counts, those like the depth asked; a cut that is screened may be the
 *   truth: what it says comes along, for the safe depth
 *
 * When more than half of the newest five heads (or of all, from two on) are screened, the record is doubted: the prior
 * keeps its mean and takes 25 %, and what was screened is judged again by that.
 * Example: two cuts that took 28 % more than the outline says, nothing else → doubted, both counted.
 * Derived: `learnRate` over what `screenCuts` leaves.
 */
export function recordRate(
  prior: Rate,
  cuts: readonly CutToJudge[],
  depthThou: number | null,
  by: Scatter,
): Result<RecordRate> {
  const possible = learnRate(prior, cuts, by.depthErrorThou, by.betweenHeadPart)
  if (!possible.ok && possible.refusal.code !== 'contradiction') return possible
  const first = screenCuts(prior, cuts, by)
  const doubted = isDoubted(first)
  const believed = doubted ? widened(prior) : prior
  // The question was raised by a prior that is not believed any more.
  const asked = doubted ? cuts.map((cut) => ({ ...cut, questioned: false })) : cuts
  const judged = doubted ? screenCuts(believed, asked, by) : first
  const counted = cuts.filter((_, at) => judged[at]?.verdict === 'counted')
  const like = depthThou === null ? counted : cutsLikeDepth(counted, depthThou)
  const rate = learnRate(believed, like, by.depthErrorThou, by.betweenHeadPart)
  if (!rate.ok) return rate
  const screened = cuts.filter((_, at) => judged[at]?.verdict === 'screened')
  return ok({
    rate: rate.value,
    judged,
    screenedCcPerThou: screened.map(({ beforeCc, afterCc, depthThou: depth }) => (beforeCc - afterCc) / depth),
    doubted,
    halfFirstPass: doubted && !agreedSince(prior, cuts, judged, by),
  })
}

const widened = (prior: Rate): Rate => ({
  ...prior,
  uCcPerThou: Math.max(prior.uCcPerThou, doubtedPart * firstGuessOf(prior)),
})

/** More than half of the newest heads screened; what the owner left out is no head here. */
function isDoubted(judged: readonly JudgedCut[]): boolean {
  const heads = judged.filter(({ verdict }) => verdict === 'counted' || verdict === 'screened').slice(-newestHeads)
  const screened = heads.filter(({ verdict }) => verdict === 'screened').length
  return heads.length >= fewestHeads && screened * 2 > heads.length
}

/** Whether a cut made after the record came to be doubted agrees with all the others. */
function agreedSince(prior: Rate, cuts: readonly CutToJudge[], judged: readonly JudgedCut[], by: Scatter): boolean {
  const since = cuts.findIndex((_, at) => isDoubted(screenCuts(prior, cuts.slice(0, at + 1), by)))
  return judged.some(
    ({ verdict, z }, at) => at > since && since >= 0 && verdict === 'counted' && Math.abs(z ?? Infinity) <= screenLimit,
  )
}
