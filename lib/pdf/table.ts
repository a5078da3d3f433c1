import { drawWords } from './canvas'
import { gap, need, rule, type Paper } from './layout'
import type { Face } from './fonts'
import { wrap } from './wrap'

export type Column = {
  readonly label: string
  /** Share of the width. */
  readonly share: number
  readonly align?: 'start' | 'end'
  readonly face?: Face
}

export type TableStyle = {
  readonly sizeMm?: number
  /** Rows set bold, by their place. */
  readonly boldRows?: ReadonlySet<number>
}

const padMm = 1.2
const plainMm = 3.3
const rowGapMm = 0.3
/** Room of a head of one line. */
const headMm = 6

/** How high a table without breaks would be, between edges so far apart. */
export function tableHeight(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  widthMm: number,
  sizeMm = plainMm,
): number {
  const lines = rows.map((row) =>
    Math.max(
      ...columns.map(({ share, face }, c) => {
        const room = (share / sharesOf(columns)) * widthMm - 2 * padMm
        return wrap(row[c] ?? '', face ?? 'text', sizeMm, room).length
      }),
    ),
  )
  return lines.reduce((sum, count) => sum + count * sizeMm * 1.32 + rowGapMm, headMm)
}

/** A table with its head repeated on each page. A row may be longer than a page: it is written line by line. */
export function table(
  paper: Paper,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  style: TableStyle = {},
): void {
  const sizeMm = style.sizeMm ?? plainMm
  const lineMm = sizeMm * 1.32
  need(paper, lineMm * 4)
  gap(paper, 0.8)
  head(paper, columns, sizeMm)
  rows.forEach((row, i) => {
    const cells = columns.map((column, c) => {
      const face = style.boldRows?.has(i) ? 'text-bold' : (column.face ?? 'text')
      return { face, lines: wrap(row[c] ?? '', face, sizeMm, widthOf(paper, columns, c) - 2 * padMm) }
    })
    const height = Math.max(...cells.map((cell) => cell.lines.length))
    if (need(paper, lineMm * Math.min(height, 6) + 1)) head(paper, columns, sizeMm)
    for (let line = 0; line < height; line++) {
      if (need(paper, lineMm)) head(paper, columns, sizeMm)
      paper.y += lineMm
      cells.forEach((cell, c) => cellLine(paper, columns, c, cell.lines[line] ?? '', cell.face, sizeMm))
    }
    paper.y += rowGapMm
    rule(paper, 0.12, 'faint')
  })
}

const sharesOf = (columns: readonly Column[]): number => columns.reduce((sum, { share }) => sum + share, 0)

const widthOf = (paper: Paper, columns: readonly Column[], c: number): number =>
  ((columns[c]?.share ?? 0) / sharesOf(columns)) * (paper.right - paper.left)

function cellLine(
  paper: Paper,
  columns: readonly Column[],
  c: number,
  words: string,
  face: Face,
  sizeMm: number,
): void {
  if (words === '') return
  const left = columns.slice(0, c).reduce((x, _, i) => x + widthOf(paper, columns, i), paper.left)
  const end = columns[c]?.align === 'end'
  const x = end ? left + widthOf(paper, columns, c) - padMm : left + (c === 0 ? 0 : padMm)
  drawWords(paper.canvas, words, x, paper.y - sizeMm * 0.3, { face, sizeMm, anchor: end ? 'end' : 'start' })
}

function head(paper: Paper, columns: readonly Column[], sizeMm: number): void {
  if (columns.every(({ label }) => label === '')) return
  const small = sizeMm * 0.9
  const cells = columns.map(({ label }, c) => wrap(label, 'text-bold', small, widthOf(paper, columns, c) - 2 * padMm))
  const height = Math.max(...cells.map((lines) => lines.length))
  for (let line = 0; line < height; line++) {
    paper.y += small * 1.32
    cells.forEach((lines, c) => cellLine(paper, columns, c, lines[line] ?? '', 'text-bold', small))
  }
  paper.y += 0.6
  rule(paper)
}
