import { cutTitle } from '@/lib/core/options/plan-words'
import type { Figure } from '@/lib/core/spec/spec-sheet'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { PaperHead } from './paper-head'

export const planTitleOf = ({ facts }: PaperHead): string =>
  facts.plan ? `Plan: ${cutTitle(facts.plan.kind)}` : 'No cut plan yet'

const figure = (label: string, valueIn: number, note: string): Figure => ({
  label,
  value: formatBare(valueIn, 'cutDepth'),
  unit: 'in',
  note,
})

/** The plan's figures, to be set huge: how deep, where, and what the chambers shall hold. */
export function planFigures(head: PaperHead): Figure[] {
  return [...depthFigures(head), ...targetFigure(head)]
}

function depthFigures({ facts, plan }: PaperHead): Figure[] {
  const cut = facts.plan
  if (!cut || !plan || cut.kind === 'none') return []
  if (cut.kind === 'clean-up') return [figure('No deeper than', cut.flatIn, 'as little as makes it flat')]
  if (cut.angleIn === 0) return [figure('Flat cut, in all', cut.flatIn, 'the mill’s screen gives the stop')]
  const shallow = plan.deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const [angle, flat] = [formatBare(cut.angleIn, 'cutDepth'), formatBare(cut.flatIn, 'cutDepth')]
  const parts = `angle part ${angle}, flat ${flat}`
  return [
    figure(`Deep edge: ${plan.deepEdge}`, cut.flatIn + cut.angleIn, parts),
    figure(`Shallow edge: ${shallow}`, cut.flatIn, ''),
  ]
}

function targetFigure({ visit, settings }: PaperHead): Figure[] {
  if (visit.targetCc === null) return []
  const typed = typedFigure({ text: visit.targetText, unit: visit.targetUnit })
  const value = /^[\d.,]+ cc$/.test(typed) ? typed.slice(0, -3) : formatBare(visit.targetCc, 'chamberVolume')
  return [
    {
      label: 'Target',
      value,
      unit: 'cc',
      note: `each within ${formatFigure(settings.ccToleranceCc, 'chamberVolume')}`,
    },
  ]
}

/** The plan in words, for the bench. */
export function planNotes({ plan, removedBeforeIn, facts }: PaperHead): string[] {
  if (!plan) return []
  const goneIn = removedBeforeIn === null || !facts.plan ? null : removedBeforeIn + facts.plan.deepestIn
  return [
    plan.predictedFinishedCc === null
      ? ''
      : `Expected when finished: ${formatFigure(plan.predictedFinishedCc, 'chamberVolume')}`,
    plan.seatWorkGivesCc > 0
      ? `The seat work to come adds about ${formatFigure(plan.seatWorkGivesCc, 'volume')}: the cut aims below the target.`
      : '',
    plan.kind === 'none' ? '' : `Rate: ${plan.thouPerCc.toFixed(2)} thou per cc, ${plan.rateWords}`,
    plan.angleDeg !== null && plan.angleIn > 0 ? `Angle: ${plan.angleDeg.toFixed(3)}°` : '',
    plan.kind === 'none'
      ? ''
      : `Gone since new after this: ${goneIn === null ? 'new thickness unknown' : formatFigure(goneIn, 'cutDepth')}`,
    plan.needs.length === 0 ? '' : `Not computed: ${plan.needs.join('; ')}`,
  ].filter((line) => line !== '')
}
