import type { PlanRecord, SeatOnRecord } from '../cut/plan-record'
import { goneByCut, mostGoneIn, sumOfGone, type Gone } from '../head-now/gone'
import { gapWording } from '../intake/face-cut'
import { seatGroundWords } from './ground-words'
import type { CutKind } from '../route/step-ids'
import { formatFigure, formatThou } from '../units/format-figure'

const titles: Readonly<Record<CutKind, string>> = {
  none: 'No cut',
  'clean-up': 'Clean-up',
  flat: 'Flat cut to size',
  angle: 'Angle cut',
  'angle-flat': 'Angle cut, then flat cut',
}

/** "Flat cut to size, 18 thou". */
export const cutTitle = (kind: CutKind): string => titles[kind]

/** The title of a plan's cut. */
export function planTitle(plan: PlanRecord): string {
  if (plan.kind === 'none') return titles.none
  const wantedIn = plan.flatDeck?.wantedThicknessIn ?? null
  if (wantedIn !== null) return `Flat cut to ${formatFigure(wantedIn, 'thickness')} thick, ${formatThou(plan.flatIn)}`
  if (plan.kind === 'clean-up') return `${titles['clean-up']}, stop at ${formatThou(plan.flatIn)}`
  const parts = [
    plan.flatIn > 0 ? `${formatThou(plan.flatIn)} flat` : '',
    plan.angleIn > 0 ? `${formatThou(plan.angleIn)} at the ${plan.deepEdge} edge` : '',
  ]
  return `${titles[plan.kind]}, ${parts.filter((part) => part !== '').join(' + ')}`
}

export type PlanLine = {
  readonly label: string
  readonly value: string
  readonly unit: string
  readonly note: string
}

const line = (label: string, value: string, note = ''): PlanLine => ({ label, value, unit: '', note })
/** What comes off; where that would be less than nothing the face stands off, and no cut is named. */
const offOrGap = (label: string, offIn: number): PlanLine =>
  offIn < 0 ? line(label, `gap of ${formatThou(-offIn)}`, gapWording) : line(label, formatThou(offIn))

const cc = (value: number): string => formatFigure(value, 'chamberVolume')

/** What the prediction leaves out: it takes the wall as square to the deck. */
export function wallDraftLine({ wallDraft }: PlanRecord): PlanLine | null {
  // Less than a hundredth of a cc is nothing that anybody reads.
  if (!wallDraft || Math.abs(wallDraft.lessCc) < 0.005) return null
  const { deg, lessCc } = wallDraft
  const more = `${formatFigure(Math.abs(lessCc), 'volume')} ${lessCc < 0 ? 'more' : 'less'} taken`
  return line('Wall draft', `${deg.toFixed(1)}°: ${more}`, 'not predicted; a learned rate has it')
}

/** Both ends of a face that an angle cut has turned; null: no wedge. */
export function faceLine({ intakeFace }: PlanRecord): PlanLine | null {
  if (!intakeFace) return null
  const { deckEndIn, coverEndIn, gapIn } = intakeFace
  const ends = `${formatThou(deckEndIn)} at the deck end, ${formatThou(coverEndIn)} at the cover end`
  return line('Intake face re-cut', ends, gapIn > 0 ? `${formatThou(gapIn)} ${gapWording}` : '')
}

/** What a cut leaves between the deck and a seat's sealing line, and what that stands on. */
export const seatLine = ({ port, tag, marginIn, ground }: SeatOnRecord): PlanLine =>
  line(
    `${port === 'intake' ? 'Intake' : 'Exhaust'} seat to the new deck`,
    marginIn > 0 ? formatThou(marginIn) : `cut through by ${formatThou(-marginIn)}: hold`,
    `${tag}, ${seatGroundWords(ground)}`,
  )

/**
 * Removed since new with this cut, where most is gone, in inches.
 * Derived: depths at the edges added up. Example: 0.020 at both edges, then 0.063 at one → 0.083.
 */
export const removedAfterIn = (cut: Pick<PlanRecord, 'flatIn' | 'angleIn' | 'deepEdge'>, before: Gone): number =>
  mostGoneIn(sumOfGone([before, goneByCut(cut)]))

/** The plan's figures in words, those that are known; `needs` follow as their own line. */
export function planLines(plan: PlanRecord, removedBefore: Gone | null): PlanLine[] {
  const cut = plan.kind !== 'none'
  const lines: (PlanLine | null)[] = [
    cut && plan.kind !== 'clean-up' ? line('Flat part', formatThou(plan.flatIn)) : null,
    plan.angleIn > 0
      ? line('Angle part', formatThou(plan.angleIn), `at the ${plan.deepEdge} edge, nothing at the other`)
      : null,
    plan.angleIn > 0 && plan.angleDeg !== null ? line('Angle', `${plan.angleDeg.toFixed(2)}°`) : null,
    plan.presentMeanCc === null
      ? null
      : line(
          'Chamber now',
          cc(plan.presentMeanCc),
          plan.presentNominal ? 'nominal, not measured' : 'mean of all chambers',
        ),
    plan.targetCc === null ? null : line('Target', cc(plan.targetCc)),
    plan.predictedAfterCutCc === null || !cut ? null : line('After the cut', cc(plan.predictedAfterCutCc), 'predicted'),
    plan.predictedFinishedCc === null || !cut
      ? null
      : line(
          'Finished',
          cc(plan.predictedFinishedCc),
          plan.seatWorkGivesCc > 0 ? `predicted, after seat work adds ${cc(plan.seatWorkGivesCc)}` : 'predicted',
        ),
    ...flatDeckLines(plan),
    wallDraftLine(plan),
    cut && !plan.flatDeck ? line('Rate', `${plan.thouPerCc.toFixed(2)} thou per cc`, plan.rateWords) : null,
    cut
      ? line(
          'Removed since new, after this',
          removedBefore === null
            ? 'new thickness unknown'
            : formatFigure(removedAfterIn(plan, removedBefore), 'cutDepth'),
          'at the deepest',
        )
      : null,
    plan.compressionBefore !== null && plan.compressionAfter !== null
      ? line(
          'Compression',
          `${plan.compressionBefore.toFixed(2)} → ${plan.compressionAfter.toFixed(2)}`,
          'before → after',
        )
      : null,
    plan.ptvLossIntakeIn === null
      ? null
      : line('Piston-to-valve loss, intake', formatThou(plan.ptvLossIntakeIn), 'estimate: check at assembly'),
    plan.ptvLossExhaustIn === null
      ? null
      : line('Piston-to-valve loss, exhaust', formatThou(plan.ptvLossExhaustIn), 'estimate: check at assembly'),
    plan.intakeSideIn === null ? null : offOrGap('Intake side, to restore port alignment', plan.intakeSideIn),
    plan.intakeRailsIn === null ? null : offOrGap('Manifold rails', plan.intakeRailsIn),
    faceLine(plan),
    ...(plan.seats ?? []).map(seatLine),
  ]
  const needs = plan.needs.map((need) => line('Not computed', need))
  return [...lines.filter((entry) => entry !== null), ...needs]
}

/** Thickness, and how deep the valves lie, of flat-deck heads. */
export function flatDeckLines({ flatDeck, kind }: PlanRecord): PlanLine[] {
  if (!flatDeck) return []
  const { heads, thicknessLeastIn, wantedThicknessIn } = flatDeck
  const inches = (valueIn: number) => formatFigure(valueIn, 'thickness')
  const least = thicknessLeastIn === null ? 'no minimum on record' : `minimum ${inches(thicknessLeastIn)}`
  const named = (label: string, tag: string) => (heads.length > 1 ? `${label}, ${tag}` : label)
  return [
    ...(wantedThicknessIn === null ? [] : [line('Thickness wanted', inches(wantedThicknessIn))]),
    ...heads.flatMap(({ tag, thicknessNowIn, thicknessLeftIn }) => [
      ...(thicknessNowIn === null
        ? []
        : [line(named('Thickness now', tag), inches(thicknessNowIn), 'at its thinnest corner')]),
      ...(thicknessLeftIn === null || kind === 'none'
        ? []
        : [line(named('Thickness left', tag), inches(thicknessLeftIn), least)]),
    ]),
    ...heads.flatMap((head) => [
      ...spanLine(named('Valves below the deck', head.tag), head.valves),
      ...spanLine(named('Injector protrusion', head.tag), head.injectors),
    ]),
    ...(flatDeck.beforeCc === null || flatDeck.afterCc === null
      ? []
      : [line('Valve pockets', `${cc2(flatDeck.afterCc)} cc`, `over each piston; before ${cc2(flatDeck.beforeCc)}`)]),
  ]
}

const cc2 = (value: number): string => value.toFixed(2).replace('-', '−')

/** The least and the most of them, before and after. */
function spanLine(
  label: string,
  rows: readonly { readonly beforeIn: number; readonly afterIn: number }[],
): readonly PlanLine[] {
  if (rows.length === 0) return []
  const span = (which: 'beforeIn' | 'afterIn') => {
    const all = rows.map((row) => row[which])
    const said = (valueIn: number) => valueIn.toFixed(4).replace('-', '−')
    return `${said(Math.min(...all))} to ${said(Math.max(...all))} in`
  }
  return [line(label, span('afterIn'), `before ${span('beforeIn')}`)]
}

const aboutTheChamber = [
  'Thickness wanted',
  'Thickness now',
  'Thickness left',
  'Valves below the deck',
  'Injector protrusion',
  'Valve pockets',
  'Flat part',
  'Angle part',
  'Angle',
  'Chamber now',
  'Target',
  'After the cut',
  'Finished',
  'Wall draft',
  'Rate',
]

/** The plan's own figures, where all that follows from it stands beside them. */
export const chamberLines = (plan: PlanRecord): PlanLine[] =>
  planLines(plan, null).filter(({ label }) =>
    aboutTheChamber.some((about) => label === about || label.startsWith(`${about}, `)),
  )
