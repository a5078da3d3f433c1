import { ok, refuse, type Result } from '../errors'
import { formatThou } from '../units/format-figure'
import type { HeadNow, PlanAnswer, PlanInput } from './plan-types'

const inches = (value: number): string => `${value.toFixed(3)} in`
const cc = (value: number): string => `${value.toFixed(1)} cc`

/** A figure that sits on its limit is inside it, however it was added up. */
const eps = 1e-9

/**
 * Metal gone since new: by the thickness where both are known, else as recorded; null: not known.
 * Derived: new thickness less the thickness now. Example: 4.500 new, 4.480 now → 0.020 in.
 */
export function removedBefore({ thicknessIn, removedBeforeIn }: HeadNow, newIn: number | null): number | null {
  if (newIn === null || thicknessIn === null) return removedBeforeIn ?? null
  return Math.max(0, newIn - thicknessIn)
}

/**
 * Since new, this cut included, of the head that lost most; null as long as one of them is not known.
 * Derived: gone before plus the deepest place of this cut. Example: 0.020 before and 0.018 flat → 0.038 in.
 */
export function totalRemoved({ heads, limits }: PlanInput, deepestIn: number): number | null {
  const gone = heads.map((head) => removedBefore(head, limits.thicknessNewIn ?? null))
  return gone.includes(null) ? null : Math.max(...gone.map(Number)) + deepestIn
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
function brokenLand({ limits, heads }: PlanInput, { flatIn, deepestIn }: PlanAnswer): Broken {
  const { land } = limits
  if (!land || deepestIn === 0) return []
  const takesIn = land.at === 'deep' ? deepestIn : flatIn
  return heads.flatMap((head) => {
    const goneIn = removedBefore(head, limits.thicknessNewIn ?? null)
    const leftIn = land.newIn - (goneIn ?? 0) - takesIn
    if (leftIn >= land.leastIn - eps) return []
    const said = `The land under the intake port of ${head.tag} would be left ${inches(leftIn)}; the minimum is ${inches(land.leastIn)}.`
    return [['landLeastIn', said] as const]
  })
}

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
  { limits, heads }: PlanInput,
  cut: { readonly angleDeg: number | null; readonly deepestIn: number },
): string[] {
  const { angleDeg, deepestIn } = cut
  const steep =
    angleDeg !== null && angleDeg > limits.angleCautionDeg + eps
      ? [
          `${angleDeg.toFixed(2)}° is a steep angle: sources differ on how far one may go. The machinist in charge decides.`,
        ]
      : []
  const unknown = heads
    .filter((head) => head.thicknessIn === null && (head.removedBeforeIn ?? null) === null)
    .map((head) => head.tag)
  if (limits.thicknessLeastIn === null || deepestIn === 0 || unknown.length === 0) return steep
  return [
    ...steep,
    `The thickness of ${unknown.join(', ')} is not known: measure it before the cut, ${inches(limits.thicknessLeastIn)} must stay.`,
  ]
}
