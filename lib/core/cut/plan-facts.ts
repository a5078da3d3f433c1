import { refuse, type Result } from '../errors'
import { knownFacts, type Fact } from '../known-facts'
import { quantities } from '../units/quantities'
import type { HeadNow, PlanInput } from './plan-types'
import { shareFact } from './split'

type Span = { readonly least: number; readonly most: number }
type Figure<T> = readonly [key: string, label: string, span: Span, of: (from: T) => number | null | undefined]

const span = (least: number, most: number): Span => ({ least, most })
const { chamberVolume, volume, thouPerCc, milledWidth, angle, thickness, land, cutDepth, stopAt, removed } = quantities
const [, , leastShare, mostShare] = shareFact(null)

/** Tables, not code run anew: a plan is worked out at every move of a slider. */
const planFigures: readonly Figure<PlanInput>[] = [
  ['targetCc', 'target', chamberVolume, (plan) => plan.targetCc],
  ['toleranceCc', 'tolerance', volume, (plan) => plan.toleranceCc],
  ['seatWorkGivesCc', 'what the seat work adds', span(0, 20), (plan) => plan.seatWorkGivesCc],
  ['thouPerCc', 'rate', thouPerCc, (plan) => plan.thouPerCc],
  ['centroidShare', 'centre of the opening', span(leastShare, mostShare), (plan) => plan.centroidShare],
  ['milledWidthIn', 'milled width', milledWidth, (plan) => plan.milledWidthIn],
  ['wantedThicknessIn', 'wanted thickness', thickness, (plan) => plan.flatDeck?.wantedThicknessIn],
  ['marginCc', 'what is left for us', span(0, 50), (plan) => plan.marginCc],
  ['stopAtIn', 'stop-at limit of the clean-up', stopAt, (plan) => plan.stopAtIn],
  ['angleLimitDeg', 'largest angle', angle, ({ limits }) => limits.angleLimitDeg],
  ['angleCautionDeg', 'angle of caution', angle, ({ limits }) => limits.angleCautionDeg],
  ['thicknessNewIn', 'thickness when new', thickness, ({ limits }) => limits.thicknessNewIn],
  ['thicknessLeastIn', 'minimum thickness', thickness, ({ limits }) => limits.thicknessLeastIn],
  ['landNewIn', 'land under the intake port, new', land, (plan) => plan.limits.land?.newIn],
  ['landLeastIn', 'minimum land under the intake port', land, (plan) => plan.limits.land?.leastIn],
  ['landXIn', 'place of the land across the deck', span(0, 1), (plan) => plan.limits.land?.atShare],
  ['classMinCc', 'smallest chamber of the class', chamberVolume, ({ limits }) => limits.classMinCc],
  ['classMaxCutIn', 'deepest cut of the class', cutDepth, ({ limits }) => limits.classMaxCutIn],
]

const headFigures: readonly Figure<HeadNow>[] = [
  ['thicknessIn', 'thickness', thickness, (head) => head.thicknessIn],
  ['removedBeforeIn', 'metal removed before', removed, (head) => head.removedBeforeIn],
  ['intakeThicknessIn', 'thickness at the intake edge', thickness, (head) => head.edgeThicknessIn?.intake],
  ['exhaustThicknessIn', 'thickness at the exhaust edge', thickness, (head) => head.edgeThicknessIn?.exhaust],
]

const possible = (value: number | null | undefined, { least, most }: Span): boolean =>
  value === null || value === undefined || (value >= least && value <= most)

/** Refuses a plan with an impossible figure; what is only unknown is let through. */
export function checkPlanFacts(input: PlanInput): Result<unknown> {
  if (input.heads.length === 0) return refuse('missing', 'Needs a head.', { needs: ['heads'] })
  const wrong: [string, Fact][] = impossibleOf(input, planFigures, '')
  for (const head of input.heads) {
    wrong.push(...impossibleOf(head, headFigures, `${head.tag} `))
    head.chambersCc.forEach((cc, at) => {
      if (possible(cc, chamberVolume)) return
      const label = `${head.tag} chamber ${at + 1}`
      wrong.push([label, [label, cc, chamberVolume.least, chamberVolume.most]])
    })
  }
  return knownFacts(Object.fromEntries(wrong))
}

function impossibleOf<T>(from: T, figures: readonly Figure<T>[], before: string): [string, Fact][] {
  const wrong = figures.filter(([, , limits, of]) => !possible(of(from), limits))
  return wrong.map(([key, label, { least, most }, of]) => [
    `${before}${key}`,
    [`${before}${label}`, of(from), least, most],
  ])
}
