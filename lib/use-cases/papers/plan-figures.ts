import {
  cutTitle,
  faceLine,
  flatDeckLines,
  removedAfterIn,
  seatLine,
  wallDraftLine,
  type PlanLine,
} from '@/lib/core/options/plan-words'
import type { StepId } from '@/lib/core/route/step-ids'
import type { Figure } from '@/lib/core/spec/spec-sheet'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { Dossier } from '@/lib/dossier/dossier'
import { thicknessAtMill, thicknessStop } from '@/lib/dossier/thickness-at-mill'
import { removedBeforeWords, removedByWords } from '@/lib/words/metal-gone'

const cuts: readonly StepId[] = ['flat-cut', 'angle-cut']

/** A head that is not to be cut must not look as if a plan were awaited. */
export function planTitleOf({ facts, route }: Dossier): string {
  if (facts.plan?.kind === 'flat' && facts.flatDeck) return 'Plan: Flat cut to a thickness'
  if (facts.plan) return `Plan: ${cutTitle(facts.plan.kind)}`
  const asked = route.some(({ stepId, state }) => cuts.includes(stepId) && state !== 'not needed')
  return asked ? 'No cut plan yet: do not cut' : 'No deck cut on this job'
}

const figure = (label: string, valueIn: number, note: string): Figure => ({
  label,
  value: formatBare(valueIn, 'cutDepth'),
  unit: 'in',
  note,
})

/** The plan's figures, to be set huge: how deep, where, and what the chambers shall hold. */
export function planFigures(head: Dossier, hasStop: boolean): Figure[] {
  return [...depthFigures(head, hasStop), ...targetFigure(head)]
}

function depthFigures(head: Dossier, hasStop: boolean): Figure[] {
  const { facts, plan } = head
  const cut = facts.plan
  if (!cut || !plan || cut.kind === 'none') return []
  if (plan.flatDeck && cut.kind === 'flat') return thicknessFigures(head, plan)
  if (cut.kind === 'clean-up') return [figure('No deeper than', cut.flatIn, 'only enough to make it flat')]
  if (cut.angleIn === 0)
    return [figure('Flat cut, in all', cut.flatIn, hasStop ? '' : 'the mill’s screen gives the stop')]
  const shallow = plan.deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  const [angle, flat] = [formatBare(cut.angleIn, 'cutDepth'), formatBare(cut.flatIn, 'cutDepth')]
  const parts = `angle part ${angle}, flat ${flat}`
  return [
    figure(`Deep edge: ${plan.deepEdge}`, cut.flatIn + cut.angleIn, parts),
    figure(`Shallow edge: ${shallow}`, cut.flatIn, ''),
  ]
}

/** Of a flat-deck head: how deep from touch-off by its own corners, and the thickness that stops it. */
function thicknessFigures(head: Dossier, plan: PlanRecord): Figure[] {
  const { depthIn, wantedIn } = thicknessStop(head, plan)
  const { leastIn } = thicknessAtMill(head)
  const least = leastIn === null ? 'no minimum on record' : `minimum ${formatFigure(leastIn, 'thickness')}`
  return [
    figure('Flat cut, in all', depthIn, 'from touch-off'),
    ...(wantedIn === null
      ? []
      : [{ label: 'Stop at thickness', value: formatBare(wantedIn, 'thickness'), unit: 'in', note: least }]),
  ]
}

function targetFigure({ visit, settings, facts }: Dossier): Figure[] {
  if (visit.targetCc === null || facts.flatDeck) return []
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

/** A line of the plan in one note; two remarks in it stand apart. */
const noteOf = (line: PlanLine | null): string =>
  line === null ? '' : `${line.label}: ${[line.value, line.note].filter((part) => part !== '').join('; ')}`

/** The plan in words, for the bench. */
export function planNotes({ plan, metalGone, facts }: Dossier): string[] {
  if (!plan) return []
  const goneIn =
    !metalGone.ok || !facts.plan
      ? null
      : removedAfterIn({ ...facts.plan, deepEdge: plan.deepEdge }, metalGone.value.gone)
  // A clean-up stops where the deck is flat: what the plan reckons is the most that it may take.
  const cleanUp = plan.kind === 'clean-up'
  return [
    plan.predictedFinishedCc === null
      ? ''
      : `${cleanUp ? 'Minimum when finished' : 'Expected when finished'}: ${formatFigure(plan.predictedFinishedCc, 'chamberVolume')}`,
    plan.seatWorkGivesCc > 0
      ? `The seat work to come adds about ${formatFigure(plan.seatWorkGivesCc, 'volume')}: the cut aims below the target.`
      : '',
    plan.kind === 'none' || plan.flatDeck ? '' : `Rate: ${plan.thouPerCc.toFixed(2)} thou per cc, ${plan.rateWords}`,
    plan.angleDeg !== null && plan.angleIn > 0 ? `Angle: ${plan.angleDeg.toFixed(3)}°` : '',
    plan.kind === 'none'
      ? ''
      : `Removed since new after this: ${goneIn === null ? 'new thickness unknown' : `${cleanUp ? 'at most ' : ''}${formatFigure(goneIn, 'cutDepth')}`}`,
    plan.kind === 'none' || !metalGone.ok
      ? ''
      : `Removed before this: ${removedBeforeWords(metalGone)}, ${removedByWords(metalGone)}`,
    ...[...flatDeckLines(plan), faceLine(plan), wallDraftLine(plan), ...(plan.seats ?? []).map(seatLine)].map(noteOf),
    plan.needs.length === 0 ? '' : `Not computed: ${plan.needs.join('; ')}`,
  ].filter((line) => line !== '')
}
