import { ok, refuse, type Result } from '../errors'
import { formatThou } from '../units/format-figure'
import {
  atDeeperEnd,
  deckNowFromNewDeckIn,
  flatGone,
  goneByCut,
  leastGoneIn,
  mostGoneIn,
  nothingGone,
  sumOfGone,
  type Gone,
} from '../head-now/gone'
import type { CutCaution } from './cautions'
import type { HeadNow, PlanAnswer, PlanInput } from './plan-types'
import type { Parts } from './split'

const inches = (value: number): string => `${value.toFixed(3)} in`
const cc = (value: number): string => `${value.toFixed(1)} cc`

/** A figure that sits on its limit is inside it, however it was added up. */
const eps = 1e-9

/**
 * Metal gone since new where most is gone, in inches: as the head's own figures have it at both edges; else by the
 * thickness where both are known, else as recorded; null: not known.
 * Derived: new thickness less the thickness now. Example: 4.500 new, 4.480 now → 0.020 in.
 */
export function removedBefore(head: HeadNow, newIn: number | null): number | null {
  const { thicknessIn, removedBeforeIn, metalGone } = head
  if (metalGone !== undefined) return metalGone && mostGoneIn(metalGone.gone)
  if (newIn === null || thicknessIn === null) return removedBeforeIn ?? null
  return Math.max(0, newIn - thicknessIn)
}

/**
 * Metal gone at both edges, in inches; null: not known. A head of which only one depth is known is taken as cut flat.
 * Derived: as `removedBefore`. Example: 4.500 new, 4.480 now → 0.020 at both edges.
 */
export function goneOfHead(head: HeadNow, newIn: number | null): Gone | null {
  if (head.metalGone !== undefined) return head.metalGone && head.metalGone.gone
  const depthIn = removedBefore(head, newIn)
  return depthIn === null ? null : flatGone(depthIn)
}

/**
 * Since new, this cut included, of the head that lost most; null as long as one of them is not known.
 * Derived: gone before plus this cut, where both together are deepest. Example: 0.020 before and 0.018 flat → 0.038 in.
 */
export function totalRemoved({ heads, limits, deepEdge = 'exhaust' }: PlanInput, cut: Parts): number | null {
  const thisCut = goneByCut({ ...cut, deepEdge })
  const after = heads.map((head) => {
    const gone = goneOfHead(head, limits.thicknessNewIn ?? null)
    return gone && mostGoneIn(sumOfGone([gone, thisCut]))
  })
  return after.includes(null) ? null : Math.max(...after.map(Number))
}

/** All limits that a plan breaks, in one refusal whose `fields` name them. */
export function refuseBroken(input: PlanInput, plan: PlanAnswer): Result<PlanAnswer> {
  const broken = [
    ...brokenAngle(input, plan),
    ...brokenDepth(input, plan),
    ...brokenThickness(input, plan),
    ...brokenLand(input, plan),
    ...brokenMinimum(input, plan),
  ]
  if (broken.length === 0) return ok(plan)
  const said = broken.map(([, words]) => words).join(' ')
  return refuse('unreachable', said, { fields: Object.fromEntries(broken) })
}

type Broken = readonly (readonly [field: string, words: string])[]

function brokenAngle({ limits }: PlanInput, { angleIn, angleDeg }: PlanAnswer): Broken {
  if (angleIn > 0 && limits.classFlatOnly) return [['classFlatOnly', 'The class allows flat cuts only.']]
  if (angleDeg === null || angleDeg <= limits.angleLimitDeg + eps) return []
  const said = `The angle would be ${angleDeg.toFixed(2)}°, over the limit of ${limits.angleLimitDeg}°: take more of it flat.`
  return [['angleLimitDeg', said]]
}

function brokenDepth({ limits }: PlanInput, { deepestIn, totalRemovedIn }: PlanAnswer): Broken {
  const { classMaxCutIn } = limits
  const goneIn = totalRemovedIn ?? deepestIn
  if (classMaxCutIn === null || deepestIn === 0 || goneIn <= classMaxCutIn + eps) return []
  const what = totalRemovedIn === null ? 'this takes' : 'with this cut it would be'
  return [
    ['classMaxCutIn', `The class allows ${formatThou(classMaxCutIn)} at the deepest; ${what} ${formatThou(goneIn)}.`],
  ]
}

function brokenThickness({ limits }: PlanInput, { heads, deepestIn }: PlanAnswer): Broken {
  const least = limits.thicknessLeastIn
  if (least === null || deepestIn === 0) return []
  return heads.flatMap(({ tag, thicknessLeftIn }) =>
    thicknessLeftIn === null || thicknessLeftIn >= least - eps
      ? []
      : [
          [
            'thicknessLeastIn',
            `${tag} would be left ${inches(thicknessLeftIn)} thick; the minimum is ${inches(least)}.`,
          ] as const,
        ],
  )
}

/** From new: what earlier cuts took of the land counts as well, where it is known. */
function brokenLand(input: PlanInput, { flatIn, angleIn, deepestIn }: PlanAnswer): Broken {
  const { land } = input.limits
  if (!land || deepestIn === 0) return []
  return input.heads.flatMap((head) => {
    const leftIn = landLeftIn(input, head, { flatIn, angleIn })
    if (leftIn === null || leftIn >= land.leastIn - eps) return []
    const said = `The land under the intake port of ${head.tag} would be left ${inches(leftIn)}; the minimum is ${inches(land.leastIn)}.`
    return [['landLeastIn', said] as const]
  })
}

/**
 * Land that a cut leaves under the intake port, in inches: at its place on record. A record without the place is taken
 * where least goes, which can only be too kind: the plan then says what it needs. Null: no land on record.
 * Derived: new land less what is gone and what the cut takes at that place. Example: 0.460 new, 0.020 gone flat, 0.060 at
 * the deep edge and the land at a tenth of the width → 0.434.
 */
export function landLeftIn({ limits, deepEdge = 'exhaust' }: PlanInput, head: HeadNow, cut: Parts): number | null {
  const { land } = limits
  if (!land) return null
  const gone = goneOfHead(head, limits.thicknessNewIn ?? null)
  const all = sumOfGone([gone ?? nothingGone, goneByCut({ ...cut, deepEdge })])
  const goesIn =
    land.atShare === null
      ? leastGoneIn(all)
      : deckNowFromNewDeckIn(atDeeperEnd(all), acrossShare(land.atShare, deepEdge))
  return land.newIn - goesIn
}

/**
 * A share counted from the shallow edge of a cut, counted from the intake edge; and back.
 * By definition of the two frames. Example: 0.1 of a cut deep at the intake edge → 0.9.
 */
export const acrossShare = (fromShallow: number, deepEdge: 'intake' | 'exhaust'): number =>
  deepEdge === 'exhaust' ? fromShallow : 1 - fromShallow

function brokenMinimum({ limits, targetCc, equalise }: PlanInput, plan: PlanAnswer): Broken {
  const { classMinCc } = limits
  const finished = plan.heads.flatMap((head) => head.chambersFinishedCc)
  if (classMinCc === null || plan.deepestIn === 0 || finished.length === 0) return []
  // What is opened afterwards ends at the target.
  const smallestCc = equalise && targetCc !== null ? targetCc : Math.min(...finished)
  if (smallestCc >= classMinCc - eps) return []
  return [
    [
      'classMinCc',
      `The smallest chamber would finish at ${cc(smallestCc)}; the class minimum is ${cc(classMinCc)}: a target ${cc(classMinCc - smallestCc)} larger, or equalise.`,
    ],
  ]
}

/** Only what passes a limit: a mild cut brings no lecture. */
export function limitCautions(
  input: PlanInput,
  cut: Parts & { readonly angleDeg: number | null; readonly deepestIn: number },
): CutCaution[] {
  const { limits, heads } = input
  const { angleDeg, deepestIn } = cut
  const steep: CutCaution[] =
    angleDeg !== null && angleDeg > limits.angleCautionDeg + eps ? [{ code: 'steep', angleDeg }] : []
  const differing = heads.flatMap(({ tag, metalGone }): CutCaution[] =>
    metalGone?.differs ? [{ code: 'gone-differs', tag, ...metalGone.differs }] : [],
  )
  if (deepestIn === 0) return [...steep, ...differing]
  return [...steep, ...differing, ...thicknessCaution(input), ...landCaution(input, cut)]
}

function thicknessCaution({ limits, heads, rateProven = true }: PlanInput): CutCaution[] {
  const tags = heads
    .filter((head) => head.thicknessIn === null && goneOfHead(head, limits.thicknessNewIn ?? null) === null)
    .map((head) => head.tag)
  const leastIn = limits.thicknessLeastIn
  return tags.length === 0 || (leastIn === null && rateProven)
    ? []
    : [{ code: 'thickness-not-known', tags, leastIn, rateProven }]
}

function landCaution(input: PlanInput, { flatIn, angleIn }: Parts): CutCaution[] {
  const { land } = input.limits
  if (!land || land.atShare !== null) return []
  const { deepEdge = 'exhaust' } = input
  const leans = input.heads.some((head) => {
    const gone = goneOfHead(head, input.limits.thicknessNewIn ?? null) ?? nothingGone
    const all = sumOfGone([gone, goneByCut({ flatIn, angleIn, deepEdge })])
    return mostGoneIn(all) - leastGoneIn(all) > 1e-9
  })
  return leans ? [{ code: 'land-place-not-known' }] : []
}
