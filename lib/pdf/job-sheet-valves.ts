import { drawWords } from './canvas'
import type { Line } from './columns'
import type { JobSheetValves } from './job-sheet-data'
import { writtenRule } from './written-rule'
import { wrap } from './wrap'

const nameMm = 12.5
const headMm = 2.1
const figureMm = 2.8
/** Room to write by hand. */
const rowMm = 4.9

/** A row a valve: what was read stands in its column, and a rule where it is still to be written. */
export function valveLines({ columns, rows }: JobSheetValves, indentMm: number, widthMm: number): Line[] {
  const eachMm = (widthMm - indentMm - nameMm) / Math.max(1, columns.length)
  const leftOf = (c: number): number => indentMm + nameMm + c * eachMm
  const heads = columns.map(({ label, unit }) => [
    ...wrap(label, 'text', headMm, eachMm - 0.8),
    ...(unit === '' ? [] : [unit]),
  ])
  const height = Math.max(0, ...heads.map((lines) => lines.length))
  const headLines = Array.from({ length: height }, (_, at): Line => ({
    heightMm: headMm * 1.3,
    goesOn: at > 0,
    draw: (canvas, x, y) =>
      heads.forEach((lines, c) =>
        drawWords(canvas, lines[at] ?? '', x + leftOf(c), y + headMm, { face: 'text', sizeMm: headMm }),
      ),
  }))
  const rowLines = rows.map(({ name, cells }, at): Line => ({
    heightMm: rowMm,
    goesOn: at === 0,
    again: headLines,
    draw: (canvas, x, y) => {
      const baseline = y + rowMm - 1
      drawWords(canvas, name, x + indentMm, baseline, { face: 'text-bold', sizeMm: figureMm })
      cells.forEach((cell, c) => {
        if (cell === null) return writtenRule(canvas, x + leftOf(c), eachMm - 1.5, baseline)
        drawWords(canvas, cell, x + leftOf(c), baseline, { face: 'figure-bold', sizeMm: figureMm })
      })
    },
  }))
  return [...headLines, ...rowLines]
}
