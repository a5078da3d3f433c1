import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { meanOrNull } from '../mean'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { formatThou } from '../units/format-figure'
import { cutAngleDeg } from './angle'
import { partsFor } from './plan-depths'
import { partsToThickness } from './plan-thickness'
import { checkPlanFacts } from './plan-facts'
import { governingWords, unevenCaution } from './plan-governing'
import { limitCautions, refuseBroken, totalRemoved } from './plan-limits'
import type { PlanAnswer, PlanInput } from './plan-types'
import { allChambers, headsAfter, outOfTolerance } from './plan-volumes'
import type { Parts } from './split'

export type { CutLimits, HeadNow, PlanAnswer, PlanInput, Split } from './plan-types'

const thouIn = 0.001
const cc = (value: number): string => `${value.toFixed(1)} cc`

/**
 * The depths of a cut from what is there and what is wanted, and what they leave.
 *
 * @param input cc 1–400, depths and thickness in inches, rate 0.5–200 thou per cc at the chamber's centroid, the centroid's
 *   share of the milled width 0.02–0.98, milled width 1–20 in
 * @returns flat and angle part in inches, angle in degrees, cc after the cut and after the seat work to come; what is not
 *   known is null and named in `needs`; refused as `missing`, `unreachable` (open the chamber, or a limit is broken) or
 *   `out-of-range` with the figures
 *
 * Assumes a chamber wall square to the deck and one depth for all heads. The mean over all chambers of all heads goes to the
 * target (equalising: the largest chamber). Depth at the centroid D = (mean − (target − seat work))·rate; flat f and angle
 * part w with D = f + w·share. A plan: what to set at the mill is the safe pass (`rate/next-pass.ts`).
 * Example: 3 cc at 6 thou per cc → flat 0.018 in; 10 cc with 0.020 flat and the centre at 0.635 of the width → w 0.063.
 * Derived: depth = (present − target + seat work)·thou per cc, parted by `partsFor`.
 */
export function makePlan(asked: PlanInput): Result<PlanAnswer> {
  const input = asked.flatDeck ? withoutCc(asked) : asked
  const possible = checkPlanFacts(input)
  if (!possible.ok) return possible
  const cut = cutOf(input)
  if (!cut.ok) return cut
  const plan = answer(input, cut.value)
  return plan.ok ? refuseBroken(input, plan.value) : plan
}

/** The chamber is in the piston: neither a target nor the rate says anything of such a head. */
const withoutCc = (input: PlanInput): PlanInput => ({
  ...input,
  targetCc: null,
  thouPerCc: null,
  seatWorkGivesCc: 0,
  heads: input.heads.map((head) => ({ ...head, chambersCc: [] })),
  limits: { ...input.limits, classMinCc: null },
})

type Cut = Parts & { readonly depthIn: number; readonly aimCc: number | null }

function cutOf(input: PlanInput): Result<Cut> {
  if (input.kind === 'none') return ok({ flatIn: 0, angleIn: 0, depthIn: 0, aimCc: null })
  if (input.flatDeck && input.kind !== 'clean-up') {
    const parts = partsToThickness(input)
    return parts.ok ? ok({ ...parts.value, depthIn: parts.value.flatIn, aimCc: null }) : parts
  }
  if (input.kind === 'clean-up') {
    const stop = knownFacts({ stopAtIn: factOf('stop-at limit of the clean-up', input.stopAtIn, 'stopAt') })
    if (!stop.ok) return stop
    const { stopAtIn } = stop.value
    return ok({ flatIn: stopAtIn, angleIn: 0, depthIn: stopAtIn, aimCc: null })
  }
  return cutToSize(input)
}

function cutToSize(input: PlanInput): Result<Cut> {
  const needed = knownFacts({
    targetCc: factOf('target', input.targetCc, 'chamberVolume'),
    presentCc: factOf('present chamber volume', governingCc(input), 'chamberVolume'),
    thouPerCc: factOf('rate', input.thouPerCc, 'thouPerCc'),
  })
  if (!needed.ok) return needed
  const { targetCc, presentCc, thouPerCc } = needed.value
  const aimCc = targetCc - input.seatWorkGivesCc
  if (presentCc <= aimCc) return noCut(input, presentCc, targetCc)
  const depthIn = (presentCc - aimCc) * thouPerCc * thouIn
  if (depthIn > quantities.cutDepth.most) {
    return refuse(
      'unreachable',
      `${cc(presentCc - aimCc)} would take ${formatThou(depthIn)} at the chamber’s centre: more than any head allows.`,
    )
  }
  const parts = partsFor(input, depthIn)
  return parts.ok ? ok({ ...parts.value, depthIn, aimCc }) : parts
}

/** The volume that is brought to the target; null as long as a head has none at all. */
function governingCc(input: PlanInput): number | null {
  if (input.heads.some((head) => head.chambersCc.length === 0)) return null
  const all = allChambers(input)
  return input.equalise ? Math.max(...all) : meanOrNull(all)
}

function noCut({ seatWorkGivesCc, toleranceCc }: PlanInput, presentCc: number, targetCc: number) {
  const seats = seatWorkGivesCc > 0 ? `, of which the seat work adds ${cc(seatWorkGivesCc)}` : ''
  const stand = `The chambers hold ${cc(presentCc)} and the target is ${cc(targetCc)}${seats}`
  return refuse(
    'unreachable',
    presentCc + seatWorkGivesCc < targetCc - toleranceCc
      ? `${stand}: cutting makes them smaller. Open the chamber instead.`
      : `${stand}: there is nothing to cut.`,
  )
}

function answer(input: PlanInput, { flatIn, angleIn, depthIn, aimCc }: Cut): Result<PlanAnswer> {
  const angle = angleOf(angleIn, input.milledWidthIn)
  if (!angle.ok) return angle
  const deepestIn = flatIn + angleIn
  const removesCc = removedCc(depthIn, input.thouPerCc)
  const parts = { flatIn, angleIn }
  const heads = headsAfter(input, removesCc, parts)
  const after = heads.flatMap((head) => head.chambersAfterCutCc)
  if (after.some((left) => left <= 0)) {
    return refuse('out-of-range', `The cut would take ${cc(removesCc ?? 0)}, more than a chamber holds.`)
  }
  const out = outOfTolerance(input, heads)
  const totalRemovedIn = totalRemoved(input, parts)
  const cut = { ...parts, angleDeg: angle.value, deepestIn }
  return ok({
    ...cut,
    kind: input.kind,
    depthAtCentroidIn: depthIn,
    removesCc,
    presentMeanCc: meanOrNull(allChambers(input)),
    aimCc,
    afterCutCc: meanOrNull(after),
    finishedCc: meanOrNull(heads.flatMap((head) => head.chambersFinishedCc)),
    heads,
    outOfTolerance: out,
    governing: governingWords(input, out),
    totalRemovedIn,
    cautions: [...limitCautions(input, cut), ...unevenCaution(input, out)],
    needs: needsOf(input, angle.value, totalRemovedIn),
  })
}

/** Null, not a refusal, when only the width is missing: the depths stand without it. */
const angleOf = (angleIn: number, milledWidthIn: number | null): Result<number | null> =>
  angleIn === 0 ? ok(0) : milledWidthIn === null ? ok(null) : cutAngleDeg(angleIn, milledWidthIn)

/** No depth takes nothing, whatever the rate. */
function removedCc(depthIn: number, thouPerCc: number | null): number | null {
  if (depthIn === 0) return 0
  return thouPerCc === null ? null : depthIn / (thouPerCc * thouIn)
}

function needsOf(input: PlanInput, angleDeg: number | null, totalRemovedIn: number | null): string[] {
  const unknown: readonly (readonly [need: string, when: boolean])[] = [
    ['presentCc', !input.flatDeck && input.heads.some((head) => head.chambersCc.length === 0)],
    ['thouPerCc', !input.flatDeck && input.thouPerCc === null && input.kind === 'clean-up'],
    ['milledWidthIn', angleDeg === null],
    ['thicknessIn', input.heads.some((head) => head.thicknessIn === null)],
    ['thicknessNewIn', totalRemovedIn === null && (input.limits.thicknessNewIn ?? null) === null],
    ['landXIn', input.limits.land?.atShare === null],
  ]
  return unknown.filter(([, when]) => when).map(([need]) => need)
}
