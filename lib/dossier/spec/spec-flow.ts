import { compareFlow, type FlowComparison, type FlowDifference, type FlowMean } from '@/lib/core/flow/compare'
import { correctedPoints } from '@/lib/core/flow/run'
import { flowPorts, type FlowPort } from '@/lib/core/flow/types'
import type { FlowOccurrence } from '@/lib/core/route/step-ids'
import { capital } from '@/lib/core/route/words'
import type { SpecFlow, SpecFlowPoint, SpecFlowRow } from '@/lib/core/spec/spec-sheet'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import { runOf, type PaperRun } from '../flow-run'
import type { Dossier } from '../dossier'

/** Flow before held against flow after, a port each; the last run of the job is the one after. */
export function flowOf(head: Dossier): SpecFlow[] {
  // All that was read: a run that was repeated is one of several here, not the newest of each lift.
  const runAt = (occurrence: FlowOccurrence, port: FlowPort) =>
    runOf(
      head.readings.filter(({ step }) => step.stepId === 'flow' && step.occurrence === occurrence),
      port,
      head.visit.headId,
    )
  return flowPorts.flatMap((port) => {
    const before = runAt('before', port)
    const after = runAt('after', port) ?? runAt('after-cut', port) ?? runAt('after-port', port)
    return before || after ? [specFlow(port, before, after, head.settings.flowRepeatabilityPart)] : []
  })
}

function specFlow(port: FlowPort, before: PaperRun | null, after: PaperRun | null, repeatability: number): SpecFlow {
  const chamber = after?.chamber || before?.chamber || ''
  const base = {
    port,
    title: chamber === '' ? capital(port) : `${capital(port)}, chamber ${chamber}`,
    beforeConditions: before?.conditionWords ?? '',
    afterConditions: after?.conditionWords ?? '',
  }
  const compared = before && after ? compareFlow(before.run, after.run, { repeatability }) : null
  if (before && after && compared?.ok) return { ...base, ...held(compared.value, before, after) }
  const why = compared && !compared.ok ? [compared.refusal.message] : []
  return { ...base, ...alone(before, after), notLike: why }
}

function held(comparison: FlowComparison, before: PaperRun, after: PaperRun) {
  const chambers =
    before.chamber === after.chamber
      ? []
      : [`chamber ${before.chamber || 'not noted'} before, ${after.chamber || 'not noted'} after`]
  const points = (side: 'before' | 'after'): SpecFlowPoint[] =>
    comparison.rows
      .filter((row) => (side === 'before' ? row.notTakenBefore : row.notTakenAfter) !== notRun)
      .map((row) => ({ liftIn: row.liftIn, flowCfm: side === 'before' ? row.beforeCfm : row.afterCfm }))
  return {
    beforeConditions: [before.conditionWords, ...comparison.remarks].filter((part) => part !== '').join('; '),
    beforePoints: points('before'),
    afterPoints: points('after'),
    rows: comparison.rows.map((row) => ({
      lift: formatFigure(row.liftIn, 'lift'),
      ...difference(row),
      note: [within(row), whyNot('before', row.notTakenBefore), whyNot('after', row.notTakenAfter)]
        .filter((part) => part !== '')
        .join('; '),
    })),
    means: comparison.means.map(meanRow),
    notLike: [...chambers, ...comparison.differs],
  }
}

const notRun = 'not run at this lift'
const whyNot = (side: string, why: string | null): string =>
  why === null ? '' : `${side} ${why === notRun ? why : `not taken: ${why}`}`
const within = ({ withinRepeatability }: FlowDifference): string =>
  withinRepeatability ? 'within the bench’s repeatability' : ''
const signed = (text: string): string =>
  text.startsWith('-') && Number(text) !== 0 ? `−${text.slice(1)}` : `+${text.replace('-', '')}`
const cfm = (value: number | null): string | null => (value === null ? null : formatBare(value, 'flow'))

/** What a reader gets who subtracts the two figures as they are printed, and its share of the one before. */
function difference({ beforeCfm, afterCfm, diffCfm }: FlowDifference) {
  const [before, after] = [cfm(beforeCfm), cfm(afterCfm)]
  if (diffCfm === null || before === null || after === null) return { before, after, diffCfm: null, diffPercent: null }
  const printed = Number(after) - Number(before)
  const percent = Number(before) === 0 ? null : (100 * printed) / Number(before)
  return {
    before,
    after,
    diffCfm: signed(printed.toFixed(1)),
    diffPercent: percent === null ? null : signed(percent.toFixed(1)),
  }
}

const meanRow = (row: FlowMean): SpecFlowRow => ({
  lift: row.band === 'whole' ? 'mean, whole' : `mean, ${row.band} third`,
  ...difference(row),
  note: [`${formatBare(row.fromIn, 'lift')} to ${formatFigure(row.toIn, 'lift')}`, within(row)]
    .filter((part) => part !== '')
    .join('; '),
})

/** A run with nothing to hold it against: its leak subtracted, no differences. */
function alone(before: PaperRun | null, after: PaperRun | null) {
  const points = (side: PaperRun | null) => {
    const corrected = side ? correctedPoints(side.run, null) : null
    return corrected?.ok ? corrected.value : []
  }
  const [beforePoints, afterPoints] = [points(before), points(after)]
  const lifts = [...new Set([...beforePoints, ...afterPoints].map(({ liftIn }) => liftIn))].sort((a, b) => a - b)
  const rows = lifts.map((liftIn): SpecFlowRow => {
    const [b, a] = [beforePoints, afterPoints].map((side) => side.find((point) => point.liftIn === liftIn))
    const why = [b, a].flatMap((point) => (point?.notTaken ? [`not taken: ${point.notTaken}`] : []))
    return {
      lift: formatFigure(liftIn, 'lift'),
      before: cfm(b?.flowCfm ?? null),
      after: cfm(a?.flowCfm ?? null),
      diffCfm: null,
      diffPercent: null,
      note: why.join('; '),
    }
  })
  const plain = (side: typeof beforePoints): SpecFlowPoint[] => side.map(({ liftIn, flowCfm }) => ({ liftIn, flowCfm }))
  return { beforePoints: plain(beforePoints), afterPoints: plain(afterPoints), rows, means: [] }
}
