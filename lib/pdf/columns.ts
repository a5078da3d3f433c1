import { drawWords, type Canvas } from './canvas'
import { newPage, roomLeft, type Paper } from './layout'
import { wrap } from './wrap'

/** One line: how high, and how it is drawn with its top left corner at (x, y). */
export type Line = {
  readonly heightMm: number
  readonly draw: (canvas: Canvas, xMm: number, yMm: number) => void
  /** It goes on with what the line before began: no column ends between them. */
  readonly goesOn?: boolean
  /** What stands over it again where a column begins with it: the head of its table. */
  readonly again?: readonly Line[]
}

/** Lines that stay together where they can. */
export type Lines = readonly Line[]

const heightOf = (lines: Lines): number => lines.reduce((sum, { heightMm }) => sum + heightMm, 0)

/**
 * Fills one column after the other from the blocks, in their order. A block that is longer than `wholeMm` may be broken;
 * others go on whole.
 */
function fill(blocks: readonly Lines[], heightMm: number, wholeMm: number): { column: Line[]; rest: Lines[] } {
  const column: Line[] = []
  const rest = [...blocks]
  let left = heightMm
  for (let block = rest[0]; block; block = rest[0]) {
    const height = heightOf(block)
    if (height <= left) {
      column.push(...block)
      left -= height
      rest.shift()
      continue
    }
    const kept = linesThatFit(block, left)
    if (height <= wholeMm || (kept < 2 && column.length > 0)) break
    const taken = Math.max(kept, 1)
    column.push(...block.slice(0, taken))
    const [next] = block.slice(taken)
    rest[0] = [...(next?.again ?? []), ...block.slice(taken)]
    break
  }
  return { column, rest }
}

function linesThatFit(block: Lines, roomMm: number): number {
  let left = roomMm
  let over = block.findIndex(({ heightMm }) => (left -= heightMm) < 0)
  if (over === -1) return block.length
  const most = over
  while (over > 0 && block[over]?.goesOn) over -= 1
  // What is longer than a column is broken all the same.
  return over === 0 ? most : over
}

function fillAll(blocks: readonly Lines[], count: number, heightMm: number, wholeMm: number) {
  const columns: Line[][] = []
  let rest = [...blocks]
  for (let i = 0; i < count; i++) {
    const filled = fill(rest, heightMm, wholeMm)
    columns.push(filled.column)
    rest = filled.rest
  }
  return { columns, rest }
}

const stepMm = 1

export type Columns = {
  readonly count: number
  readonly gapMm: number
  /** A longer block is broken where that spares a page; where it only saves height, when `tight`. */
  readonly wholeMm: number
  readonly tight?: boolean
  /** Writes the head of a page that it goes on to. */
  readonly onNewPage: () => void
}

/** Whether all of it goes on to the rest of this page. */
export const fitsHere = (paper: Paper, blocks: readonly Lines[], { count, wholeMm }: Columns): boolean =>
  fillAll(blocks, count, roomLeft(paper), wholeMm).rest.length === 0

/** Columns of about the same height when everything fits; full ones, and the rest on the next page, when it does not. */
function pageOf(blocks: readonly Lines[], { count, wholeMm, tight }: Columns, roomMm: number) {
  const total = blocks.reduce((sum, block) => sum + heightOf(block), 0)
  const mostlyWholeMm = tight ? wholeMm : Math.max(wholeMm, roomMm / 2)
  for (const least of [mostlyWholeMm, wholeMm]) {
    const full = fillAll(blocks, count, roomMm, least)
    if (full.rest.length > 0) continue
    for (let height = total / count; height < roomMm; height += stepMm) {
      const page = fillAll(blocks, count, height, least)
      if (page.rest.length === 0) return page
    }
    return full
  }
  return fillAll(blocks, count, roomMm, mostlyWholeMm)
}

export const columnMm = (paper: Paper, { count, gapMm }: Pick<Columns, 'count' | 'gapMm'>): number =>
  (paper.right - paper.left - (count - 1) * gapMm) / count

/** Sets blocks of lines in columns, over as many pages as they need. */
export function flowColumns(paper: Paper, blocks: readonly Lines[], setting: Columns): void {
  const pitch = columnMm(paper, setting) + setting.gapMm
  let waiting = blocks.filter((block) => block.length > 0)
  while (waiting.length > 0) {
    const { columns, rest } = pageOf(waiting, setting, roomLeft(paper))
    columns.forEach((column, i) => {
      column.reduce((y, line) => {
        line.draw(paper.canvas, paper.left + i * pitch, y)
        return y + line.heightMm
      }, paper.y)
    })
    paper.y += Math.max(...columns.map(heightOf))
    waiting = rest
    if (waiting.length === 0) return
    newPage(paper)
    setting.onNewPage()
  }
}

const dashMm = 2.8

/** A bold title over a list in small letters; nothing when the list is empty. */
export function listLines(title: string, items: readonly string[], sizeMm: number, widthMm: number): Line[] {
  if (items.length === 0) return []
  const line = (words: string, indentMm: number, bold: boolean, lead = '', goesOn = false): Line => ({
    heightMm: sizeMm * 1.3,
    goesOn,
    draw: (canvas, x, y) => {
      const style = { face: bold ? 'text-bold' : 'text', sizeMm } as const
      drawWords(canvas, lead, x, y + sizeMm, style)
      drawWords(canvas, words, x + indentMm, y + sizeMm, style)
    },
  })
  const space: Line = { heightMm: sizeMm * 0.5, draw: () => undefined }
  return [
    line(title, 0, true),
    ...items.flatMap((item) =>
      wrap(item, 'text', sizeMm, widthMm - dashMm).map((words, i) =>
        line(words, dashMm, false, i === 0 ? '–' : '', i > 0),
      ),
    ),
    space,
  ]
}

/** The same lines, smaller as a whole: laid out for a width that is larger by as much. */
export const closer = (lines: Lines, share: number): Lines =>
  share === 1
    ? lines
    : lines.map(({ heightMm, draw, goesOn = false, again = [] }) => ({
        heightMm: heightMm * share,
        goesOn,
        again: closer(again, share),
        draw: (canvas, xMm, yMm) => canvas.page.scaled(share, [xMm, yMm], ([x, y]) => draw(canvas, x, y)),
      }))
