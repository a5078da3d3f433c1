import { ok, refuse, type Result } from '../../errors'
import { parseFigure } from '../../units/parse-figure'
import { flowPorts, type FlowPort } from '../types'
import type { ColumnUse, LiftUnit } from './guess-columns'
import type { TableRow } from './split-cells'

export type ImportedReading = {
  /** "intake@0.300" */
  readonly point: string
  readonly port: FlowPort
  readonly liftIn: number
  /** cfm; null: nothing stands there, and the reason is still to be given. */
  readonly flowCfm: number | null
  /** As it stands in the table. */
  readonly text: string
}

export type LeftOut = {
  readonly line: number
  /** The whole line, or one port's figure of it. */
  readonly what: 'line' | FlowPort
  readonly why: string
}

export type ImportedFlow = {
  readonly readings: readonly ImportedReading[]
  /** Lines below the heading. */
  readonly linesRead: number
  readonly leftOut: readonly LeftOut[]
}

export type ImportChoice = {
  readonly columns: readonly ColumnUse[]
  /** Rows above the figures, which are no readings. */
  readonly heading: number
  /** For a lift that is written without its unit. */
  readonly liftUnit: LiftUnit
}

/**
 * Turns the rows of a table into readings of a flow run, and says of every line that gave none why.
 *
 * @param rows as `readFlowTable` gives them
 * @param choice use of each column; unit of the lift, when none is written beside it
 * @returns readings with the flow as it is written (cfm), the lift in inches to the thou; a line is left out when its lift
 *   is no figure, not from 0 to 2 in, or there already; a port's flow, when it is no figure or not from 0 to 2000 cfm
 *
 * Where nothing stands, the reading is "not taken" and waits for its reason. Refused without one column of lifts and one
 * of flow. Example: "0.300, 201.4" → intake@0.300, 201.4.
 */
export function flowFromTable(rows: readonly TableRow[], choice: ImportChoice): Result<ImportedFlow> {
  const wrong = choiceRefused(choice.columns)
  if (wrong) return wrong
  const readings: ImportedReading[] = []
  const leftOut: LeftOut[] = []
  const lineOf = new Map<string, number>()
  const lines = rows.slice(Math.max(0, choice.heading))
  for (const { line, cells } of lines) {
    const lift = liftOf(cells[choice.columns.indexOf('lift')] ?? '', choice.liftUnit, lineOf)
    if (!lift.ok) {
      leftOut.push({ line, what: 'line', why: lift.refusal.message })
      continue
    }
    lineOf.set(lift.value, line)
    for (const port of flowPorts) {
      const column = choice.columns.indexOf(port)
      if (column < 0) continue
      const reading = readingOf(cells[column] ?? '', port, lift.value)
      if (reading.ok) readings.push(reading.value)
      else leftOut.push({ line, what: port, why: reading.refusal.message })
    }
  }
  return ok({ readings, linesRead: lines.length, leftOut })
}

const useNames = { lift: 'lift', intake: 'intake', exhaust: 'exhaust' } as const

function choiceRefused(columns: readonly ColumnUse[]) {
  const chosen = columns.filter((use) => use !== null)
  const twice = chosen.find((use, place) => chosen.indexOf(use) !== place)
  if (twice) return refuse('contradiction', `Two columns are named ${useNames[twice]}: choose one.`)
  if (!chosen.includes('lift')) {
    return refuse('missing', 'Say which column is the lift.', { needs: ['lift'] })
  }
  if (chosen.length > 1) return null
  return refuse('missing', 'Say which column is the intake or the exhaust flow.', {
    needs: ['intake', 'exhaust'],
  })
}

/** The lift to the thou, as points name it. */
function liftOf(cell: string, unit: LiftUnit, lineOf: ReadonlyMap<string, number>): Result<string> {
  if (cell === '') return refuse('missing', 'No lift stands there.')
  const read = parseFigure(cell, 'lift', unit)
  if (!read.ok) return read
  const lift = read.value.value.toFixed(3)
  const before = lineOf.get(lift)
  return before === undefined ? ok(lift) : refuse('contradiction', `The lift ${lift} in is on line ${before} already.`)
}

/** How an empty place is written. */
const nothing = /^[-–—.\s]*$/

function readingOf(cell: string, port: FlowPort, lift: string): Result<ImportedReading> {
  const place = { point: `${port}@${lift}`, port, liftIn: Number(lift) }
  if (nothing.test(cell)) return ok({ ...place, flowCfm: null, text: '' })
  const read = parseFigure(cell, 'flow')
  return read.ok ? ok({ ...place, flowCfm: read.value.value, text: read.value.text }) : read
}
