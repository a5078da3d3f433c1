import { planTitle } from '@/lib/core/options/plan-words'
import type { SecondCheckNeed } from '@/lib/core/route/codes'
import { secondCheckNeeded } from '@/lib/core/route/second-check'
import type { RouteStep } from '@/lib/core/route/types'
import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { removedBeforeWords, removedByWords } from '@/lib/words/metal-gone'
import type { Reader } from '@/lib/data/db'
import type { Dossier } from '@/lib/dossier/dossier'
import { cutAtStep, type CutAtStep } from './cut-at-step'
import { benchFiguresOf } from '@/lib/dossier/at-bench'
import { nextPassAtMill, type NextPass } from '@/lib/dossier/next-pass'
import { thicknessAtMill, thicknessStop } from '@/lib/dossier/thickness-at-mill'
import { secondCheckText } from '@/lib/words/second-check'
import { benchLine } from '@/lib/words/at-bench'
import { cutCautionText } from '@/lib/words/cut-cautions'

export type { NextPass } from '@/lib/dossier/next-pass'

type Line = { readonly label: string; readonly value: string; readonly unit: string; readonly note: string }

/** The plan's figures for one step. At the deck mill one is huge: how deep to stop from touch-off. */
export type PlanAtStep = {
  readonly huge: Line | null
  /** At the deck mill, for a cut to size. */
  readonly pass: NextPass | null
  /** What a cut really took, once it has been measured. */
  readonly cut: CutAtStep | null
  readonly lines: readonly Line[]
  readonly cautions: readonly string[]
}

const none: PlanAtStep = { huge: null, pass: null, cut: null, lines: [], cautions: [] }
const line = (label: string, value: string, note = ''): Line => ({ label, value, unit: '', note })

export async function planAtStep(
  reader: Reader,
  dossier: Dossier,
  step: RouteStep,
  mates: readonly Dossier[],
): Promise<PlanAtStep> {
  const { plan } = dossier
  const own = benchFiguresOf(dossier, step).map((figure) => ({ ...benchLine(figure), unit: '' }))
  if (!plan) return { ...none, lines: own }
  const base: PlanAtStep = {
    ...none,
    cut: cutAtStep(dossier, step, plan),
    lines: [line('Plan', planTitle(plan))],
    cautions: plan.cautions.map(cutCautionText),
  }
  if (step.stepId === 'flat-cut') return flatCut(reader, dossier, { plan, step }, mates)
  if (step.stepId === 'angle-cut') return angleCut(base, plan)
  if (own.length > 0) return { ...base, lines: [...own, ...base.lines, ...predicted(step, plan)] }
  return step.stepId === 'chambers' ? base : none
}

function angleCut(base: PlanAtStep, record: PlanRecord): PlanAtStep {
  const huge = {
    label: `Depth at the ${record.deepEdge} edge, nothing at the other`,
    value: (record.angleIn * 1000).toFixed(1),
    unit: 'thou',
    note: record.angleDeg === null ? '' : `${record.angleDeg.toFixed(2)}°`,
  }
  return { ...base, huge }
}

const predicted = ({ stepId }: RouteStep, { predictedFinishedCc }: PlanRecord): Line[] =>
  stepId !== 'finished' || predictedFinishedCc === null
    ? []
    : [line('Predicted', formatFigure(predictedFinishedCc, 'chamberVolume'))]

/** How deep the other heads of the pair were cut from touch-off, as it was last read at the mill. */
function mateDepth(mates: readonly Dossier[]): string {
  const depths = mates
    .flatMap(({ readings }) => readings)
    .filter(({ kind, step, value }) => kind === 'cut-depth' && step.stepId === 'flat-cut' && value !== null)
    .toSorted((a, b) => a.seq - b.seq)
  const depth = depths.at(-1)?.value
  return depth === null || depth === undefined ? 'not cut yet' : formatThou(depth)
}

async function flatCut(
  reader: Reader,
  dossier: Dossier,
  { plan, step }: { readonly plan: PlanRecord; readonly step: RouteStep },
  mates: readonly Dossier[],
): Promise<PlanAtStep> {
  const lines = [
    line('Plan', planTitle(plan)),
    ...(mates.length > 0 ? [line('The mate', mateDepth(mates))] : []),
    line('Removed since new, before this', removedBeforeWords(dossier.metalGone), removedByWords(dossier.metalGone)),
  ]
  const base: PlanAtStep = { ...none, lines, cautions: plan.cautions.map(cutCautionText) }
  if (dossier.facts.flatDeck && plan.kind !== 'clean-up') return toThickness(base, dossier, plan)
  if (plan.kind !== 'clean-up') {
    const pass = await nextPassAtMill(reader, dossier, plan, step.state === 'done')
    const need = step.state === 'done' ? null : secondCheckNeeded(dossier.facts, step)
    return { ...base, pass: need ? waitsForCheck(pass, need) : pass }
  }
  const huge = {
    label: 'Stop no deeper than',
    value: (plan.flatIn * 1000).toFixed(1),
    unit: 'thou',
    note: 'Only enough to make it flat.',
  }
  const withThickness = dossier.facts.flatDeck ? [...lines, ...thicknessLines(dossier)] : lines
  return { ...base, huge, lines: withThickness }
}

/** A flat-deck head is stopped by its thickness: depth alone, and no chamber is read. */
function toThickness(base: PlanAtStep, dossier: Dossier, plan: PlanRecord): PlanAtStep {
  const { depthIn, wantedIn, totalIn } = thicknessStop(dossier, plan)
  const huge = {
    label: totalIn > 0 ? 'Stop at, from the first touch-off' : 'Stop at, from touch-off',
    value: (depthIn * 1000).toFixed(1),
    unit: 'thou',
    note: wantedIn === null ? '' : `${formatFigure(wantedIn, 'thickness')} thick at the thinnest corner`,
  }
  const left =
    totalIn > 0
      ? [line('Off so far', formatThou(totalIn)), line('Still to come', formatThou(Math.max(0, depthIn - totalIn)))]
      : []
  return { ...base, huge, lines: [...left, ...base.lines, ...thicknessLines(dossier)] }
}

/** What the gauge should read while it is cut, and where it must stop. */
function thicknessLines(dossier: Dossier): Line[] {
  const { nowIn, leastIn } = thicknessAtMill(dossier)
  return [
    ...(nowIn === null ? [] : [line('Thickness before, thinnest corner', formatFigure(nowIn, 'thickness'))]),
    line('Minimum thickness', leastIn === null ? 'none on record' : formatFigure(leastIn, 'thickness')),
  ]
}

/** The depth is there to be confirmed, not to be cut to. */
const waitsForCheck = (pass: NextPass, need: SecondCheckNeed): NextPass => ({
  ...pass,
  headline: 'Do not cut yet: second check.',
  why: secondCheckText(need),
  then: `After it: ${pass.headline}`,
  stopAtThou: null,
  thisPassThou: null,
  verdict: 'stop',
})
