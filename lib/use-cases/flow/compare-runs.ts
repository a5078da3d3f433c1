import { compareFlow, type FlowDifference, type FlowMean, type FlowRow } from '@/lib/core/flow/compare'
import { exhaustToIntake } from '@/lib/core/flow/exhaust-to-intake'
import { correctedPoints } from '@/lib/core/flow/run'
import { flowPorts, type FlowPoint, type FlowPort } from '@/lib/core/flow/types'
import { capital } from '@/lib/core/route/words'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import type { BenchRun } from './runs'

/** One line of a comparison, ready to show; null: no figure. */
export type HeldRow = {
  readonly id: string
  readonly lift: string
  readonly before: string | null
  readonly after: string | null
  readonly diffCfm: string | null
  readonly diffPercent: string | null
  readonly note: string
}

export type Held = {
  readonly id: string
  /** "T-0412, flow run after, against T-0412, flow run before" */
  readonly title: string
  readonly differentHead: boolean
  readonly beforeName: string
  readonly afterName: string
  /** In words; when there are any, no difference is called a gain or a loss. */
  readonly differs: readonly string[]
  readonly remarks: readonly string[]
  readonly rows: readonly HeldRow[]
  readonly means: readonly HeldRow[]
  /** Why the two cannot be held against each other; '' when they can. */
  readonly refused: string
}

export type DrawnRun = { readonly name: string; readonly points: readonly FlowPoint[] }

export type PortComparison = {
  readonly port: FlowPort
  readonly title: string
  readonly drawn: readonly DrawnRun[]
  /** "Drawn at 28 inH₂O, leak subtracted"; what could not be drawn so is said. */
  readonly drawnAt: string
  readonly conditions: readonly { readonly name: string; readonly words: string }[]
  readonly held: readonly Held[]
}

export type Ratio = {
  readonly names: readonly { readonly id: string; readonly name: string }[]
  readonly rows: readonly { readonly lift: string; readonly percents: Readonly<Record<string, string>> }[]
}

/** Every chosen run held against the first, a port at a time; ports that fewer than two of them have are only drawn. */
export function holdRuns(runs: readonly BenchRun[], repeatability: number): readonly PortComparison[] {
  return flowPorts.flatMap((port) => {
    const having = runs.filter((run) => run.ports[port] !== null)
    if (having.length === 0) return []
    const [first, ...others] = having
    return [
      {
        port,
        title: capital(port),
        ...drawing(having, port),
        conditions: having.map((run) => ({ name: run.name, words: run.ports[port]?.conditionWords ?? '' })),
        held: first ? others.map((other) => hold(first, other, port, repeatability)) : [],
      },
    ]
  })
}

function hold(before: BenchRun, after: BenchRun, port: FlowPort, repeatability: number): Held {
  const [left, right] = [before.ports[port], after.ports[port]]
  const base = {
    id: `${port} ${before.id} ${after.id}`,
    title: `${after.name}, against ${before.name}`,
    differentHead: before.headId !== after.headId,
    beforeName: before.shortName,
    afterName: after.shortName,
  }
  const nothing = { differs: [], remarks: [], rows: [], means: [] }
  if (!left || !right) return { ...base, ...nothing, refused: 'This port was not run.' }
  const compared = compareFlow(left.run, right.run, { repeatability })
  if (!compared.ok) return { ...base, ...nothing, refused: compared.refusal.message }
  const { rows, means, differs, remarks } = compared.value
  const chambers =
    left.chamber === right.chamber
      ? []
      : [`chamber ${left.chamber || 'not noted'} before, ${right.chamber || 'not noted'} after`]
  return {
    ...base,
    differs: [...chambers, ...differs],
    remarks: remarks.filter((remark) => remark !== 'different head').map(capital),
    rows: rows.map(liftRow),
    means: means.map(meanRow),
    refused: '',
  }
}

const cfm = (value: number | null): string | null => (value === null ? null : formatBare(value, 'flow'))
const signed = (text: string): string =>
  /^-?0(\.0*)?$/.test(text) ? text.replace('-', '') : text.startsWith('-') ? `−${text.slice(1)}` : `+${text}`
const within = ({ withinRepeatability }: FlowDifference): string =>
  withinRepeatability ? 'within the bench’s repeatability' : ''
const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join('; ')

const figures = ({ beforeCfm, afterCfm, diffCfm, diffPercent }: FlowDifference) => ({
  before: cfm(beforeCfm),
  after: cfm(afterCfm),
  diffCfm: diffCfm === null ? null : signed(diffCfm.toFixed(1)),
  diffPercent: diffPercent === null ? null : signed(diffPercent.toFixed(1)),
})

const notRun = 'not run at this lift'
const whyNot = (side: string, why: string | null): string => {
  if (why === null) return ''
  return why === notRun ? `${side} ${why}` : `${side} not taken: ${why}`
}

const liftRow = (row: FlowRow): HeldRow => ({
  id: row.liftIn.toFixed(4),
  lift: formatFigure(row.liftIn, 'lift'),
  ...figures(row),
  note: joined(within(row), whyNot('before', row.notTakenBefore), whyNot('after', row.notTakenAfter)),
})

const meanRow = (row: FlowMean): HeldRow => ({
  id: row.band,
  lift: `Mean, ${row.band}`,
  ...figures(row),
  note: joined(`${formatBare(row.fromIn, 'lift')} to ${formatFigure(row.toIn, 'lift')}`, within(row)),
})

/** All at the pressure of the last, as the tables have it; a run whose pressure nobody noted is drawn as it was read. */
function drawing(runs: readonly BenchRun[], port: FlowPort): Pick<PortComparison, 'drawn' | 'drawnAt'> {
  const own = runs.flatMap((run) => {
    const found = run.ports[port]
    return found ? [{ name: run.shortName, run: found.run }] : []
  })
  const at = own.at(-1)?.run.conditions.testPressureInH2O ?? null
  const drawn = own.map(({ name, run }) => {
    const known = run.conditions.testPressureInH2O !== null
    const points = correctedPoints(run, known ? at : null)
    return { name, points: points.ok ? points.value : [] }
  })
  const asRead = own.filter(({ run }) => run.conditions.testPressureInH2O === null).map(({ name }) => name)
  const converted = own.some(({ run }) => ![null, at].includes(run.conditions.testPressureInH2O))
  const words =
    at === null
      ? 'No test pressure on the last run: drawn as read, leak subtracted'
      : `Drawn at ${at} inH₂O, leak subtracted${converted ? '; runs at other pressures are converted by the square root' : ''}`
  const rest = at !== null && asRead.length > 0 ? `; ${asRead.join(', ')}: pressure not noted, as read` : ''
  return { drawn, drawnAt: `${words}${rest}.` }
}

/** What the exhaust flows of what the intake flows, per run that has both; null when none has. */
export function ratioOf(runs: readonly BenchRun[]): Ratio | null {
  const found = runs.flatMap((run) => {
    const { intake, exhaust } = run.ports
    const ratio = intake && exhaust ? exhaustToIntake(intake.run, exhaust.run) : null
    return ratio?.ok && ratio.value.length > 0 ? [{ run, ratio: ratio.value }] : []
  })
  if (found.length === 0) return null
  const lifts = [...new Set(found.flatMap(({ ratio }) => ratio.map(({ liftIn }) => liftIn)))].sort((a, b) => a - b)
  return {
    names: found.map(({ run }) => ({ id: run.id, name: run.name })),
    rows: lifts.map((lift) => ({
      lift: formatFigure(lift, 'lift'),
      percents: Object.fromEntries(
        found.flatMap(({ run, ratio }) => {
          const at = ratio.find(({ liftIn }) => liftIn === lift)
          return at ? [[run.id, `${at.percent.toFixed(1)} %`]] : []
        }),
      ),
    })),
  }
}
