import { ok, refuse, type Result } from '../../errors'
import { splitCells, type TableRow } from './split-cells'

export type FlowTable = {
  readonly separator: Separator
  /** Rows that have something in them, all of one width. */
  readonly rows: readonly TableRow[]
  readonly columns: number
}

/** In this order when as many lines have the one as the other: beside a tab or spaces, a comma is a decimal comma. */
export const separators = ['\t', ';', ','] as const
export type Separator = (typeof separators)[number] | 'spaces'

export const mostCharacters = 200_000
const mostRows = 500
const mostColumns = 40

/**
 * Reads a table of flow figures from pasted text or a CSV file.
 *
 * @param text cells parted by tabs, semicolons, runs of spaces between figures, or commas, whichever most lines have;
 *   quoted or not; a byte order mark and any line ends; at most 200,000 characters, 500 rows, 40 columns
 * @returns rows with the line each began on; empty lines are left out, cells are trimmed, short rows filled up
 *
 * Example: "lift;in\r\n0,100;61,5" → two rows of two cells, "0,100" and "61,5" on line 2.
 */
export function readFlowTable(text: string): Result<FlowTable> {
  if (text.length > mostCharacters) {
    return refuse('out-of-range', 'That is more than 200,000 characters: a flow run is a few lines.')
  }
  const plain = text.replace(/^\uFEFF/, '')
  const separator = separatorOf(plain)
  const split = separator === 'spaces' ? splitCells(tabbed(plain), '\t') : splitCells(plain, separator)
  if (!split.ok) return split
  const rows = split.value
    .map(({ line, cells }) => ({ line, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
  if (rows.length === 0) return refuse('missing', 'There is nothing in it yet.')
  const columns = Math.max(...rows.map(({ cells }) => cells.length))
  if (rows.length > mostRows || columns > mostColumns) {
    return refuse('out-of-range', `That is more than ${mostRows} lines or ${mostColumns} columns.`)
  }
  const filled = ({ line, cells }: TableRow): TableRow => ({
    line,
    cells: Array.from({ length: columns }, (_, place) => cells[place] ?? ''),
  })
  return ok({ separator, rows: rows.map(filled), columns })
}

/** A space between two figures parts cells; one beside a comma, or before a unit, does not. */
const betweenFigures = /\d[ \u00a0]+[-–.,\d]/
const oneSpaceBetweenFigures = /\d[ \u00a0][-–.,\d]/

const order = ['\t', ';', 'spaces', ','] as const

function separatorOf(text: string): Separator {
  const lines = text.replaceAll(/"(?:[^"]|"")*"/g, '').split(/\r\n|\r|\n/)
  const parts = (line: string, separator: Separator): boolean =>
    separator === 'spaces' ? betweenFigures.test(line) : line.includes(separator)
  const linesWith = (separator: Separator) => lines.filter((line) => parts(line, separator)).length
  return order.reduce((best: Separator, next) => (linesWith(next) > linesWith(best) ? next : best), '\t')
}

/** Runs of spaces as tabs. Where all figures stand two spaces apart or more, one space is part of a heading's words. */
function tabbed(text: string): string {
  const gap = oneSpaceBetweenFigures.test(text) ? /[ \u00a0]+/g : /[ \u00a0]{2,}/g
  return text
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim().replace(gap, '\t'))
    .join('\n')
}
