import type { ReadingFact } from '../readings/types'
import { placesOf, valvePoint, valvesOf, type Place, type Port, type Valve, type ValveCounts } from '../readings/valves'
import type { ValveKind } from '../readings/valve-kinds'
import { valveColumns, type ValveColumn } from './columns'

/** As much of a reading as the sheet hangs on. */
export type SheetReading = Pick<ReadingFact, 'seq' | 'kind' | 'point' | 'value' | 'text' | 'notTaken'> & {
  /** It came with "All alike": nobody measured this valve. */
  readonly filled?: boolean
}

export type SheetCell<R extends SheetReading> = {
  readonly point: string
  /** Null: nothing was given yet. */
  readonly reading: R | null
  /** Filled, not measured: by "All alike", or where one answer stood for all valves of a kind. */
  readonly filled: boolean
}

export type SheetColumn<R extends SheetReading> = {
  readonly column: ValveColumn
  /** One a valve, in the order of the rows. */
  readonly cells: readonly SheetCell<R>[]
}

export type ValveSheet<R extends SheetReading> = {
  readonly valves: readonly Valve[]
  readonly counts: ValveCounts
  readonly columns: readonly SheetColumn<R>[]
}

/**
 * The valve sheet of a head: a row for each valve, a column for each figure, and in each cell the newest answer.
 *
 * @param readings the answers that count; @param head chambers 1–12, valves a chamber 1–3 each
 * @returns every column, empty ones too
 *
 * Derived: a valve's own answer counts before one that stood for all of its kind; of two alike in this the later one.
 * Example: seat width "intake" 0.060 and "2-intake" 0.058 → 0.060 filled at chamber 1, 0.058 measured at chamber 2.
 */
export function valveSheet<R extends SheetReading>(
  readings: readonly R[],
  head: { readonly chambers: number; readonly valves: ValveCounts },
): ValveSheet<R> {
  const valves = valvesOf(head.chambers, head.valves)
  const newest = new Map<string, R>()
  for (const reading of readings) {
    const key = keyOf(reading)
    if ((newest.get(key)?.seq ?? -1) <= reading.seq) newest.set(key, reading)
  }
  return {
    valves,
    counts: head.valves,
    columns: valveColumns.map((column) => ({
      column,
      cells: valves.map((valve) => cellOf(column.kind, valvePoint(valve), newest)),
    })),
  }
}

const keyOf = ({ kind, point }: Place): string => `${kind}|${point}`

function cellOf<R extends SheetReading>(kind: ValveKind, point: string, newest: ReadonlyMap<string, R>): SheetCell<R> {
  const reading = placesOf(kind, point).flatMap((place) => newest.get(keyOf(place)) ?? [])[0] ?? null
  return { point, reading, filled: reading !== null && (reading.filled === true || reading.point !== point) }
}

/** The columns that have an answer, or that are asked for. */
export const columnsInUse = <R extends SheetReading>(
  { columns }: ValveSheet<R>,
  asked: ReadonlySet<ValveKind> = new Set(),
): readonly SheetColumn<R>[] =>
  columns.filter(({ column, cells }) => asked.has(column.kind) || cells.some(({ reading }) => reading !== null))

export type ColumnState = 'empty' | 'part' | 'filled' | 'part filled' | 'measured'

/** How a column came about: measured at each valve, filled in one go, or some of both. Angles are no measurement. */
export function columnState<R extends SheetReading>({ cells }: SheetColumn<R>): ColumnState {
  const given = cells.filter(({ reading }) => reading !== null)
  const filled = given.filter((cell) => cell.filled)
  if (given.length === 0) return 'empty'
  if (filled.length > 0) return filled.length === cells.length ? 'filled' : 'part filled'
  return given.length === cells.length ? 'measured' : 'part'
}

/**
 * What a valve is called on its sheet: "1 intake"; "1 intake 2" where a chamber has two of a kind.
 *
 * By definition. Example: chamber 3, exhaust, of one → "3 exhaust".
 */
export const valveName = ({ chamber, port, number }: Valve, counts: Readonly<Record<Port, number>>): string =>
  counts[port] > 1 ? `${chamber} ${port} ${number}` : `${chamber} ${port}`
