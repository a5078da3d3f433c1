import type { Drawing } from '@/lib/drawing/marks'
import { drawWords, type Canvas, type TextStyle } from './canvas'
import { drawMarks } from './draw-marks'
import { wordsWidth, type Face } from './fonts'
import { addPage, closeFile, openFile, type Heading, type PaperFile } from './paper-file'
import type { PaperSize } from './print-setting'
import { wrap } from './wrap'

const sizes: Readonly<Record<PaperSize, readonly [width: number, height: number]>> = {
  letter: [215.9, 279.4],
  a4: [210, 297],
}

/** Width and height of a sheet. */
export const pageSizeMm = (size: PaperSize): readonly [number, number] => sizes[size]

const marginMm = 10
const footerMm = 4.5
const lineOf = (sizeMm: number): number => sizeMm * 1.32

/** A paper that is written from top to bottom and goes on to a new page when one is full. All lengths in millimetres. */
export type Paper = {
  readonly file: PaperFile
  readonly left: number
  readonly right: number
  readonly bottom: number
  canvas: Canvas
  /** Where the next thing goes. */
  y: number
}

export function startPaper(heading: Heading): Paper {
  const [width, height] = sizes[heading.setting.paper]
  const file = openFile(heading)
  return {
    file,
    left: marginMm,
    right: width - marginMm,
    bottom: height - marginMm - footerMm,
    canvas: addPage(file, width, height),
    y: marginMm,
  }
}

export function newPage(paper: Paper): void {
  const [width, height] = sizes[paper.file.heading.setting.paper]
  paper.canvas = addPage(paper.file, width, height)
  paper.y = marginMm
}

/** Room left above the foot of the page. */
export const roomLeft = (paper: Paper): number => paper.bottom - paper.y

/** Goes on to a new page unless so much room is left; true when it did. */
export function need(paper: Paper, roomMm: number): boolean {
  if (paper.y + roomMm <= paper.bottom || paper.y <= marginMm) return false
  newPage(paper)
  return true
}

export function gap(paper: Paper, mm: number): void {
  paper.y += mm
}

export function rule({ canvas, left, right, y }: Paper, widthMm = 0.3, tone: 'ink' | 'faint' = 'ink'): void {
  canvas.page.line([left, y], [right, y], tone, widthMm)
}

/** A title of a part, kept with a few lines, or the room asked for, of what follows. */
export function heading(paper: Paper, words: string, keepMm = 14): void {
  const sizeMm = 4.6
  if (paper.y > marginMm) gap(paper, 2)
  need(paper, sizeMm * 1.6 + keepMm)
  rule(paper)
  paragraph(paper, words, { face: 'text-bold', sizeMm })
  gap(paper, 0.6)
}

const plain = { face: 'text', sizeMm: 3.5 } as const

export type ParagraphStyle = Partial<TextStyle> & {
  /** Room left free at the left. */
  readonly indentMm?: number
  /** What stands in that room on the first line: a dash, a number. */
  readonly lead?: string
  readonly widthMm?: number
}

export function paragraph(paper: Paper, words: string, more: ParagraphStyle = {}): void {
  if (words === '') return
  const style = { ...plain, ...more }
  const x = paper.left + (more.indentMm ?? 0)
  const widthMm = more.widthMm ?? paper.right - x
  wrap(words, style.face, style.sizeMm, widthMm).forEach((line, i) => {
    need(paper, lineOf(style.sizeMm))
    paper.y += lineOf(style.sizeMm)
    if (i === 0 && more.lead) drawWords(paper.canvas, more.lead, paper.left, paper.y - style.sizeMm * 0.3, style)
    drawWords(paper.canvas, line, x, paper.y - style.sizeMm * 0.3, style)
  })
}

export function list(paper: Paper, items: readonly string[], more: ParagraphStyle = {}): void {
  for (const item of items) paragraph(paper, item, { indentMm: 3.5, lead: '–', ...more })
}

/** How high a list without breaks would be, between edges so far apart. */
export const listHeight = (items: readonly string[], widthMm: number, sizeMm: number = plain.sizeMm): number =>
  items.reduce((sum, item) => sum + wrap(item, plain.face, sizeMm, widthMm - 3.5).length * lineOf(sizeMm), 0)

/** A drawing across the paper or at a place of it; `widthMm` scales it. */
export function drawing(paper: Paper, picture: Drawing, more: { xMm?: number; widthMm?: number } = {}): number {
  const scale = (more.widthMm ?? picture.widthMm) / picture.widthMm
  drawMarks(paper.canvas, picture, more.xMm ?? paper.left, paper.y, scale)
  return picture.heightMm * scale
}

/** Draws parts side by side from the same height, and goes on under the lowest. They must fit: ask for room first. */
export function beside(paper: Paper, parts: readonly (() => void)[]): void {
  const top = paper.y
  const ends = parts.map((part) => {
    paper.y = top
    part()
    return paper.y
  })
  paper.y = Math.max(top, ...ends)
}

/** The same paper, between other edges: for what stands beside something else. */
export function within(paper: Paper, left: number, right: number, draw: (part: Paper) => void): void {
  const part: Paper = { ...paper, left, right }
  draw(part)
  paper.canvas = part.canvas
  paper.y = part.y
}

/** Numbers the pages and closes the file. "Made": a paper that is kept is printed again as it was made. */
export function finishPaper({ file, left, right }: Paper): Promise<Uint8Array> {
  const { title, shopName, setting } = file.heading
  file.pages.forEach((canvas, i) => {
    const y = canvas.page.heightMm - marginMm
    const style = { face: 'text', sizeMm: 2.9, tone: 'faint' } as const
    const last = `page ${i + 1} of ${file.pages.length}`
    const middle = `made ${setting.printedAt}`
    const room = right - left - 2 * wordsWidth(last, 'text') * 2.9
    drawWords(canvas, clip(`${shopName} · ${title}`, 'text', 2.9, room * 0.6), left, y, style)
    drawWords(canvas, clip(middle, 'text', 2.9, room * 0.4), right - 24, y, { ...style, anchor: 'end' })
    drawWords(canvas, last, right, y, { ...style, anchor: 'end' })
  })
  return closeFile(file)
}

/** As much of the words as fits on one line, with an ellipsis when some are left off. */
export function clip(words: string, face: Face, sizeMm: number, widthMm: number): string {
  if (wordsWidth(words, face) * sizeMm <= widthMm) return words
  let kept = ''
  for (const letter of words) {
    if (wordsWidth(`${kept}${letter}…`, face) * sizeMm > widthMm) break
    kept += letter
  }
  return `${kept}…`
}
