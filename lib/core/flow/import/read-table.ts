import { ok, refuse, type Result } from '../../errors'
import { splitCells, type TableRow } from './split-cells'

export type FlowTable = {
  readonly separator: Separator
  /** Rows that have something in them, all of one width. */
  readonly rows: readonly TableRow[]
  readonly columns: number
}

/** In this order when as many lines have the one as the other: beside a tab, a comma is a decimal comma. */
export const separators = ['\t', ';', ','] as const
export type Separator = (typeof separators)[number]

export const mostCharacters = 200_000
const mostRows = 500
const mostColumns = 40

/**
 * Reads a table of flow figures from pasted text or a CSV file.
 *
 * @param text cells parted by tabs, semicolons or commas, whichever most lines have; quoted or not; a byte order mark and
 *   any line ends; at most 200,000 characters, 500 rows, 40 columns
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
  const split = splitCells(plain, separator)
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

function separatorOf(text: string): Separator {
  const lines = text.replaceAll(/"(?:[^"]|"")*"/g, '').split(/\r\n|\r|\n/)
  const linesWith = (separator: Separator) => lines.filter((line) => line.includes(separator)).length
  return separators.reduce((best, next) => (linesWith(next) > linesWith(best) ? next : best))
}
