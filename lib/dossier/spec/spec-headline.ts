import type { Figure, SpecFlow } from '@/lib/core/spec/spec-sheet'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { deepestMeasuredIn } from '../measured-cut'
import type { Dossier } from '../dossier'
import { chamberMeans } from './spec-chambers'
import { thicknessFigure } from './spec-flat-deck'
import { ratiosOf } from './spec-compression'

/** Two to four figures for the first page: what was asked for, and what came of it. */
export function headlineOf(head: Dossier, flow: readonly SpecFlow[]): Figure[] {
  return [
    ...chamberFigure(head),
    ...thicknessFigure(head),
    ...ratioFigure(head),
    ...cutFigure(head),
    ...flowFigure(flow),
  ].slice(0, 4)
}

function chamberFigure(head: Dossier): Figure[] {
  const { afterCc } = chamberMeans(head)
  if (afterCc === null) return []
  const { targetCc, targetText, targetUnit } = head.visit
  const note = targetCc === null ? 'finished, mean' : `asked: ${typedFigure({ text: targetText, unit: targetUnit })}`
  return [{ label: 'Chambers, mean', value: formatBare(afterCc, 'chamberVolume'), unit: 'cc', note }]
}

function ratioFigure(head: Dossier): Figure[] {
  const ratios = ratiosOf(head)
  if (!ratios || ratios.after === null) return []
  const note = ratios.before === null ? '' : `was ${ratios.before.toFixed(2)}`
  return [{ label: 'Compression', value: ratios.after.toFixed(2), unit: ': 1', note }]
}

function cutFigure(head: Dossier): Figure[] {
  const deepestIn = deepestMeasuredIn(head)
  if (deepestIn === null || head.facts.plan === null || head.facts.plan.kind === 'none') return []
  const angled = head.facts.plan.angleIn > 0
  const label = angled && head.plan ? `Off the deck, ${head.plan.deepEdge} edge` : 'Off the deck'
  return [{ label, value: formatBare(deepestIn, 'cutDepth'), unit: 'in', note: 'as measured' }]
}

function flowFigure(flow: readonly SpecFlow[]): Figure[] {
  const points = flow.find(({ port }) => port === 'intake')?.afterPoints ?? []
  const best = points.reduce<{ liftIn: number; flowCfm: number } | null>(
    (most, { liftIn, flowCfm }) => (flowCfm !== null && flowCfm > (most?.flowCfm ?? 0) ? { liftIn, flowCfm } : most),
    null,
  )
  if (!best) return []
  return [
    {
      label: 'Peak intake flow',
      value: formatBare(best.flowCfm, 'flow'),
      unit: 'cfm',
      note: `at ${formatFigure(best.liftIn, 'lift')}`,
    },
  ]
}
