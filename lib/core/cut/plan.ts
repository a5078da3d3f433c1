import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import type { CutKind } from '../route/types'
import { cutAngleDeg, edgeDepthIn } from './volume'

/** How the depth at the chamber's centroid is shared between the flat and the angle part. */
export type Split =
  | { readonly by: 'flat'; readonly flatIn: number }
  | { readonly by: 'angle'; readonly angleIn: number }
  | { readonly by: 'degrees'; readonly angleDeg: number }
  /** The flat part is worth the shop's margin: what a vendor leaves for the last cut in house. */
  | { readonly by: 'margin' }

export type HeadNow = {
  readonly tag: string
  /** One a chamber, from the marked end; a single nominal figure when nothing was measured. */
  readonly chambersCc: readonly number[]
  /** Thinnest corner now; null: not measured. */
  readonly thicknessIn: number | null
}

export type CutLimits = {
  readonly angleCautionDeg: number
  readonly angleLimitDeg: number
  /** Least thickness the shop allows; null: none on record. */
  readonly thicknessLeastIn: number | null
  readonly classFlatOnly: boolean
  readonly classMinCc: number | null
  readonly classMaxCutIn: number | null
}

export type PlanInput = {
  readonly kind: CutKind
  readonly heads: readonly HeadNow[]
  readonly targetCc: number | null
  readonly toleranceCc: number
  /** What the seat work still to come will add; the cut aims below the target by it. */
  readonly seatWorkGivesCc: number
  readonly thouPerCc: number
  /** Opening's centre from the shallow edge, as a share of the milled width; null: not known. */
  readonly centroidShare: number | null
  readonly milledWidthIn: number | null
  readonly split: Split
  readonly marginCc: number
  /** Clean-up only. */
  readonly stopAtIn: number | null
  readonly limits: CutLimits
}

export type HeadAfter = {
  readonly tag: string
  readonly chambersAfterCutCc: readonly number[]
  readonly chambersFinishedCc: readonly number[]
  readonly thicknessLeftIn: number | null
}

export type PlanAnswer = {
  readonly kind: CutKind
  readonly flatIn: number
  readonly angleIn: number
  /** Null: needs the milled width. */
  readonly angleDeg: number | null
  readonly depthAtCentroidIn: number
  readonly deepestIn: number
  readonly presentMeanCc: number | null
  readonly afterCutCc: number | null
  readonly finishedCc: number | null
  readonly heads: readonly HeadAfter[]
  readonly cautions: readonly string[]
}

const thouIn = 0.001

/**
 * The depths of a cut from what is there and what is wanted, and what they leave.
 *
 * @param input cc 1–400, depths and thickness in inches, rate in thou per cc at the chamber's centroid
 * @returns flat and angle part in inches, angle in degrees, cc after the cut and after the seat work to come; refused as
 *   `missing`, `unreachable` or `out-of-range` with the figures
 *
 * The mean over all chambers of all heads goes to the target: one depth for the pair. Depth at the centroid
 * D = (mean − (target − seat work))·rate; flat f and angle part w with D = f + w·share.
 * Example: 3 cc at 6 thou per cc → flat 0.018 in; 10 cc with 0.020 flat and the centre at 0.635 of the width → w 0.063.
 */
export function makePlan(input: PlanInput): Result<PlanAnswer> {
  const mean = meanOf(input.heads)
  if (input.kind === 'none') return ok(answer(input, mean, { flatIn: 0, angleIn: 0, depthIn: 0 }, null))
  if (input.kind === 'clean-up') return cleanUp(input, mean)
  const needed = knownFacts({
    targetCc: ['target', input.targetCc, 1, 400],
    presentCc: ['present chamber volume', mean, 1, 400],
    thouPerCc: ['rate', input.thouPerCc, 0.5, 200],
    seatWorkGivesCc: ['what the seat work adds', input.seatWorkGivesCc, 0, 20],
  })
  if (!needed.ok) return needed
  const { targetCc, presentCc, thouPerCc, seatWorkGivesCc } = needed.value
  const takeCc = presentCc - (targetCc - seatWorkGivesCc)
  if (takeCc <= 0) return noCut(presentCc, targetCc, seatWorkGivesCc, input.toleranceCc)
  const parts = share(input, takeCc * thouPerCc * thouIn)
  if (!parts.ok) return parts
  const degrees = angleOf(parts.value.angleIn, input.milledWidthIn)
  const refused = overLimit(input, parts.value, degrees, takeCc)
  return refused ?? ok(answer(input, mean, parts.value, degrees))
}

type Parts = { readonly flatIn: number; readonly angleIn: number; readonly depthIn: number }

function meanOf(heads: readonly HeadNow[]): number | null {
  const all = heads.flatMap((head) => head.chambersCc)
  return all.length === 0 ? null : all.reduce((sum, cc) => sum + cc, 0) / all.length
}

function cleanUp(input: PlanInput, mean: number | null): Result<PlanAnswer> {
  const facts = knownFacts({ stopAtIn: ['stop-at limit of the clean-up', input.stopAtIn, 0.0005, 0.1] })
  if (!facts.ok) return facts
  const parts = { flatIn: facts.value.stopAtIn, angleIn: 0, depthIn: facts.value.stopAtIn }
  return (
    overLimit(input, parts, null, parts.depthIn / (input.thouPerCc * thouIn)) ??
    ok(answer(input, mean, parts, null))
  )
}

function noCut(presentCc: number, targetCc: number, seatCc: number, toleranceCc: number): Result<never> {
  const seats = seatCc > 0 ? `, of which the seat work adds ${seatCc.toFixed(1)}` : ''
  return presentCc + seatCc < targetCc - toleranceCc
    ? refuse('unreachable', `The chambers read ${presentCc.toFixed(1)} cc and the target is ${targetCc.toFixed(1)}${seats}: cutting makes them smaller. Open the chamber instead.`)
    : refuse('unreachable', `The chambers read ${presentCc.toFixed(1)} cc and the target is ${targetCc.toFixed(1)}${seats}: there is nothing to cut.`)
} // prettier-ignore

/** Flat and angle part that together take the depth at the centroid. */
function share(input: PlanInput, depthIn: number): Result<Parts> {
  if (input.kind === 'flat') return inRange({ flatIn: depthIn, angleIn: 0, depthIn })
  const facts = knownFacts({
    centroidShare: [
      'centre of the opening from the shallow edge, and the milled width',
      input.centroidShare,
      0.02,
      0.98,
    ],
  })
  if (!facts.ok) return facts
  const part = facts.value.centroidShare
  if (input.kind === 'angle') return inRange({ flatIn: 0, angleIn: depthIn / part, depthIn })
  const angle = angleWanted(input)
  if (!angle.ok) return angle
  const flatIn = angle.value === null ? flatWanted(input) : depthIn - angle.value * part
  const angleIn = angle.value ?? (depthIn - flatIn) / part
  if (flatIn < 0 || angleIn < 0) {
    return refuse('unreachable', `That ${flatIn < 0 ? 'angle' : 'flat'} part alone takes more than the whole cut: make it less than ${(1000 * (flatIn < 0 ? depthIn / part : depthIn)).toFixed(1)} thou.`)
  } // prettier-ignore
  return inRange({ flatIn, angleIn, depthIn })
}

function angleWanted({ split, milledWidthIn }: PlanInput): Result<number | null> {
  if (split.by === 'angle') return ok(split.angleIn)
  if (split.by !== 'degrees') return ok(null)
  const width = knownFacts({ milledWidthIn: ['milled width', milledWidthIn, 1, 20] })
  return width.ok ? edgeDepthIn(split.angleDeg, width.value.milledWidthIn) : width
}

const flatWanted = ({ split, marginCc, thouPerCc }: PlanInput): number =>
  split.by === 'flat' ? split.flatIn : marginCc * thouPerCc * thouIn

const inRange = (parts: Parts): Result<Parts> =>
  parts.flatIn + parts.angleIn <= 0.5
    ? ok(parts)
    : refuse(
        'out-of-range',
        `The cut would be ${(parts.flatIn + parts.angleIn).toFixed(3)} in deep: more than any head has to give.`,
      )

function angleOf(angleIn: number, milledWidthIn: number | null): number | null {
  if (angleIn === 0) return 0
  if (milledWidthIn === null) return null
  const degrees = cutAngleDeg(angleIn, milledWidthIn)
  return degrees.ok ? degrees.value : null
}

function overLimit(input: PlanInput, parts: Parts, degrees: number | null, takeCc: number): Result<never> | null {
  const { limits, heads, seatWorkGivesCc } = input
  const deepestIn = parts.flatIn + parts.angleIn
  if (limits.classFlatOnly && parts.angleIn > 0) return refuse('unreachable', 'The class allows flat cuts only.')
  if (limits.classMaxCutIn !== null && deepestIn > limits.classMaxCutIn) {
    return refuse('unreachable', `The class allows ${limits.classMaxCutIn.toFixed(3)} in at the deepest; this takes ${deepestIn.toFixed(3)}.`)
  }
  if (degrees !== null && degrees > limits.angleLimitDeg) {
    return refuse('unreachable', `The angle would be ${degrees.toFixed(2)}°, over the limit of ${limits.angleLimitDeg}°: take more of it flat.`)
  }
  const thin = heads.find(
    (head) => head.thicknessIn !== null && limits.thicknessLeastIn !== null && head.thicknessIn - deepestIn < limits.thicknessLeastIn,
  )
  if (thin?.thicknessIn && limits.thicknessLeastIn !== null) {
    return refuse('unreachable', `${thin.tag} would be left ${(thin.thicknessIn - deepestIn).toFixed(3)} in thick; the least is ${limits.thicknessLeastIn.toFixed(3)}.`)
  }
  const smallest = Math.min(...heads.flatMap((head) => head.chambersCc)) - takeCc + seatWorkGivesCc
  if (limits.classMinCc !== null && Number.isFinite(smallest) && smallest < limits.classMinCc) {
    return refuse('unreachable', `The smallest chamber would finish at ${smallest.toFixed(1)} cc; the class minimum is ${limits.classMinCc.toFixed(1)}.`)
  }
  return null
} // prettier-ignore

function answer(input: PlanInput, mean: number | null, parts: Parts, degrees: number | null): PlanAnswer {
  const takenCc = parts.depthIn / (input.thouPerCc * thouIn)
  const deepestIn = parts.flatIn + parts.angleIn
  const cut = (cc: number) => cc - takenCc
  const finish = (cc: number) => cc - takenCc + input.seatWorkGivesCc
  const heads = input.heads.map(({ tag, chambersCc, thicknessIn }) => ({
    tag,
    chambersAfterCutCc: chambersCc.map(cut),
    chambersFinishedCc: chambersCc.map(finish),
    thicknessLeftIn: thicknessIn === null ? null : thicknessIn - deepestIn,
  }))
  return {
    kind: input.kind,
    ...parts,
    angleDeg: input.kind === 'angle' || input.kind === 'angle-flat' ? degrees : 0,
    depthAtCentroidIn: parts.depthIn,
    deepestIn,
    presentMeanCc: mean,
    afterCutCc: mean === null ? null : cut(mean),
    finishedCc: mean === null ? null : finish(mean),
    heads,
    cautions: [...angleCaution(input, degrees), ...uneven(input, heads)],
  }
}

const angleCaution = ({ limits }: PlanInput, degrees: number | null): string[] =>
  degrees !== null && degrees > limits.angleCautionDeg
    ? [
        `${degrees.toFixed(2)}° is a steep angle: sources differ on how far one may go. The machinist in charge decides.`,
      ]
    : []

/** Cutting moves every chamber alike: what is uneven before stays uneven. */
function uneven({ targetCc, toleranceCc, kind }: PlanInput, heads: readonly HeadAfter[]): string[] {
  if (targetCc === null || kind === 'none' || kind === 'clean-up') return []
  const out = heads.flatMap((head) =>
    head.chambersFinishedCc.flatMap((cc, place) =>
      Math.abs(cc - targetCc) > toleranceCc + 1e-9 ? [`chamber ${place + 1} of ${head.tag} (${cc.toFixed(1)} cc)`] : [],
    ),
  )
  return out.length === 0 ? [] : [`Cutting alone cannot bring every chamber within ${toleranceCc} cc of ${targetCc}: ${out.join(', ')}. Equalise them, or open the small ones.`]
} // prettier-ignore
