import { ok, refuse, type Result } from '../../errors'

export type TableRow = {
  /** The line of the text on which the row begins, counted from 1. */
  readonly line: number
  readonly cells: readonly string[]
}

type Ended = 'cell' | 'row' | 'text'
type Cell = { readonly text: string; readonly next: number; readonly ended: Ended }

/**
 * Parts a text into rows of cells, as RFC 4180 has it: a cell in double quotes may hold the separator, a line end and,
 * doubled, the quote itself. What RFC 4180 forbids and bench programs still write is kept as it stands: a quote inside a
 * bare cell (the inch mark of 0.300"), and what follows a closing quote.
 *
 * `separator`: one character. Line ends may be CRLF, LF or CR. A quote that is never closed is refused, with its line.
 */
export function splitCells(text: string, separator: string): Result<readonly TableRow[]> {
  const rows: TableRow[] = []
  let cells: string[] = []
  let at = 0
  let line = 1
  let rowLine = 1
  while (at <= text.length) {
    const cell = cellAt(text, at, separator)
    if (!cell) return refuse('unreadable', `A quote that begins on line ${line} is never closed.`)
    cells.push(cell.text)
    line += lineEnds(text.slice(at, cell.next))
    at = cell.next
    if (cell.ended === 'cell') continue
    rows.push({ line: rowLine, cells })
    if (cell.ended === 'text') break
    cells = []
    rowLine = line
  }
  return ok(rows)
}

const lineEnds = (text: string): number => text.match(/\r\n|\r|\n/g)?.length ?? 0

function cellAt(text: string, start: number, separator: string): Cell | null {
  if (text[start] !== '"') return bareCell(text, start, separator, '')
  let inside = ''
  let at = start + 1
  for (;;) {
    const quote = text.indexOf('"', at)
    if (quote < 0) return null
    inside += text.slice(at, quote)
    if (text[quote + 1] !== '"') return bareCell(text, quote + 1, separator, inside)
    inside += '"'
    at = quote + 2
  }
}

function bareCell(text: string, start: number, separator: string, before: string): Cell {
  let end = start
  while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end] !== '\r') end += 1
  const cell = before + text.slice(start, end)
  if (end >= text.length) return { text: cell, next: end, ended: 'text' }
  if (text[end] === separator) return { text: cell, next: end + 1, ended: 'cell' }
  const next = text[end] === '\r' && text[end + 1] === '\n' ? end + 2 : end + 1
  return { text: cell, next, ended: 'row' }
}
