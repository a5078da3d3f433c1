import { parseFigure } from '../../units/parse-figure'
import type { TableRow } from './split-cells'

export const columnUses = ['lift', 'intake', 'exhaust'] as const
/** What a column holds; null: it is left out. */
export type ColumnUse = (typeof columnUses)[number] | null

export const liftUnits = ['in', 'thou', 'mm'] as const
export type LiftUnit = (typeof liftUnits)[number]

export type ColumnGuess = {
  /** A use for each column. */
  readonly columns: readonly ColumnUse[]
  /** How many rows stand above the figures: the heading, and what comes before it. */
  readonly heading: number
  readonly liftUnit: LiftUnit
}

const headingWithin = 20

/**
 * Guesses which column is the lift, the intake and the exhaust; the person at the screen has the last word.
 *
 * By the words of the heading ("valve lift", "L", "intake", "int cfm", "ex"); "in" is the lift's unit unless the lift has
 * a column by name. Without such words the first column whose figures only rise (or only fall) is the lift, and the
 * columns of figures after it are intake and exhaust. Unit of the lift: as the heading says, else by the size of the middle
 * one: at most 2 is inches, at most 30 mm, more is thou.
 */
export function guessColumns(rows: readonly TableRow[]): ColumnGuess {
  const named = rows.slice(0, headingWithin).findIndex(({ cells }) => byWords(cells).includes('lift'))
  const heading = named >= 0 ? named + 1 : wordsOnTop(rows)
  const head = named >= 0 ? rows[named] : undefined
  const figures = rows.slice(heading)
  const columns = completed(head ? byWords(head.cells) : [], figures)
  const lift = columns.indexOf('lift')
  return { columns, heading, liftUnit: unitSaid(head?.cells[lift] ?? '') ?? unitBySize(figures, lift) }
}

const isFigure = (cell: string): boolean => numberIn(cell) !== null

/** As the widest quantity of the bench reads it: a plain number of any size that occurs there. */
function numberIn(cell: string): number | null {
  const read = parseFigure(cell, 'flow')
  return read.ok && read.value.unit === 'cfm' ? read.value.value : null
}

function wordsOnTop(rows: readonly TableRow[]): number {
  const first = rows.findIndex(({ cells }) => cells.some(isFigure))
  return first < 0 ? 0 : first
}

const spoken: Readonly<Record<'lift' | 'intake' | 'exhaust', RegExp>> = {
  lift: /\blifts?\b|^l$|^l[,\s(]/,
  intake: /\b(intakes?|int|inlets?|inl)\b/,
  exhaust: /\b(exhausts?|exh|ex)\b/,
}

function byWords(cells: readonly string[]): ColumnUse[] {
  const said = cells.map((cell) => cell.toLowerCase())
  // "intake lift" and "exhaust lift" are lifts; two of them are settled by hand.
  const uses = said.map((cell): ColumnUse => columnUses.find((use) => spoken[use].test(cell)) ?? null)
  const short = said.map((cell): ColumnUse => (/^in\b/.test(cell) ? 'intake' : null))
  if (!uses.includes('lift')) {
    const unit = said.findIndex((cell) => /^\(?(in|inch|inches|mm|thou)\)?$/.test(cell))
    if (unit >= 0) uses[unit] = 'lift'
  }
  if (!uses.includes('intake')) {
    const place = short.findIndex((use, at) => use !== null && uses[at] === null)
    if (place >= 0) uses[place] = 'intake'
  }
  return onceEach(uses)
}

const onceEach = (uses: readonly ColumnUse[]): ColumnUse[] =>
  uses.map((use, place) => (use !== null && uses.indexOf(use) !== place ? null : use))

/** What the words left open: the lift is the first column that only rises or only falls, flow stands after it. */
function completed(said: readonly ColumnUse[], figures: readonly TableRow[]): ColumnUse[] {
  const width = figures[0]?.cells.length ?? said.length
  const uses = Array.from({ length: width }, (_, place): ColumnUse => said[place] ?? null)
  const columnOf = (place: number) => figures.map(({ cells }) => numberIn(cells[place] ?? ''))
  if (!uses.includes('lift')) {
    const lift = uses.findIndex((use, place) => use === null && isMonotone(columnOf(place)))
    if (lift >= 0) uses[lift] = 'lift'
  }
  if (uses.includes('intake') || uses.includes('exhaust')) return uses
  const after = uses.indexOf('lift')
  const flows = uses.flatMap((use, place) =>
    use === null && place > after && columnOf(place).some((value) => value !== null) ? [place] : [],
  )
  for (const [place, use] of [
    [flows[0], 'intake'],
    [flows[1], 'exhaust'],
  ] as const) {
    if (place !== undefined) uses[place] = use
  }
  return uses
}

function isMonotone(values: readonly (number | null)[]): boolean {
  const known = values.filter((value) => value !== null)
  if (known.length < 2 || known.length < values.length / 2) return false
  const steps = known.slice(1).map((value, place) => value - (known[place] ?? 0))
  return steps.every((step) => step > 0) || steps.every((step) => step < 0)
}

function unitSaid(heading: string): LiftUnit | null {
  const said = heading.toLowerCase()
  if (/\bmm\b/.test(said)) return 'mm'
  if (/\bthou\b/.test(said)) return 'thou'
  return /\b(in|inch|inches)\b|"|″/.test(said) ? 'in' : null
}

const mostIn = 2
const mostMm = 30

/** The middle lift tells: one line that is wrong must not decide for all. */
function unitBySize(figures: readonly TableRow[], lift: number): LiftUnit {
  const lifts = figures.flatMap(({ cells }) => numberIn(cells[lift] ?? '') ?? []).sort((a, b) => a - b)
  const middle = lifts[Math.floor(lifts.length / 2)] ?? 0
  if (middle <= mostIn) return 'in'
  return middle <= mostMm ? 'mm' : 'thou'
}
