import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import PDFDocument from 'pdfkit'
import type { Point, Tone } from '@/lib/drawing/marks'
import type { FontName } from '@/lib/pdf/faces'
import { jobSheet } from '@/lib/pdf/job-sheet'
import { paperColours, pointsPerMm, Sheet } from '@/lib/pdf/sheet'
import { specSheet } from '@/lib/pdf/spec-sheet'
import { tagLabel } from '@/lib/pdf/tag-label'
import { job, label, setting, spec } from '@/tests/pdf/sample-papers'
import { median, type Figure } from './measure'

type Writer = () => Promise<Uint8Array>

/** What is measured. */
export const papers: Readonly<Record<string, Writer>> = {
  'spec sheet, two pages with curves': () => specSheet(spec, setting),
  'job sheet': () => jobSheet(job, setting),
  'tag labels, a pair': () => tagLabel([label, { ...label, tag: 'T-0043' }], setting),
}

/** One thing that was put on a page. */
type Put =
  | { readonly kind: 'page'; readonly size: readonly [number, number] }
  | {
      readonly kind: 'text'
      readonly text: string
      readonly face: string
      readonly size: number
      readonly x: number
      readonly y: number
      readonly turnDeg: number
      readonly colour: string
    }
  | {
      readonly kind: 'path'
      readonly d: string
      readonly x: number
      readonly y: number
      readonly scale: number
      readonly fill: string | null
      readonly stroke: string | null
      readonly width: number
      readonly dash: readonly number[]
    }
  | {
      readonly kind: 'box'
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
      readonly fill: string | null
      readonly stroke: string | null
      readonly lineWidth: number
    }
  | {
      readonly kind: 'line'
      readonly from: readonly [number, number]
      readonly to: readonly [number, number]
      readonly width: number
      readonly colour: string
    }

const colourOf = (tone: Tone): string => {
  const hex = (part: number) => Math.round(part * 255).toString(16)
  return `#${paperColours[tone].map((part) => hex(part).padStart(2, '0')).join('')}`
}

const pt = (mm: number): number => mm * pointsPerMm
const ptAt = ([x, y]: Point): [number, number] => [pt(x), pt(y)]

/** What our paper puts on its pages, from the top, as it is being written: content to be written by others too. */
export async function contentOf(write: Writer): Promise<readonly Put[]> {
  const put: Put[] = []
  const pages = new Map<Sheet, Put[]>()
  const on = (page: Sheet): Put[] => {
    const known = pages.get(page)
    if (known) return known
    const fresh: Put[] = [{ kind: 'page', size: [pt(page.widthMm), pt(page.heightMm)] }]
    pages.set(page, fresh)
    return fresh
  }
  const { run, path, line, box } = Sheet.prototype
  Sheet.prototype.run = function (words, set) {
    const [x, y] = ptAt(set.at)
    const [size, colour] = [pt(set.sizeMm), colourOf(set.tone)]
    on(this).push({ kind: 'text', text: words.text, face: words.font, size, x, y, turnDeg: set.turnDeg, colour })
    run.call(this, words, set)
  }
  Sheet.prototype.path = function (mark, at, scale) {
    const { d, fill, stroke } = mark
    const [x, y] = ptAt(at)
    on(this).push({
      kind: 'path',
      d,
      x,
      y,
      scale: pt(scale),
      fill: fill && colourOf(fill),
      stroke: stroke && colourOf(stroke.tone),
      width: stroke?.widthMm ?? 0,
      dash: stroke?.dashMm ?? [],
    })
    path.call(this, mark, at, scale)
  }
  Sheet.prototype.line = function (from, to, tone, widthMm) {
    on(this).push({ kind: 'line', from: ptAt(from), to: ptAt(to), width: pt(widthMm), colour: colourOf(tone) })
    line.call(this, from, to, tone, widthMm)
  }
  Sheet.prototype.box = function (drawn) {
    const [x, y] = ptAt(drawn.at)
    const [width, height, lineWidth] = [pt(drawn.widthMm), pt(drawn.heightMm), pt(drawn.lineMm)]
    on(this).push({ kind: 'box', x, y, width, height, fill: null, stroke: colourOf('ink'), lineWidth })
    box.call(this, drawn)
  }
  try {
    await write()
  } finally {
    Object.assign(Sheet.prototype, { run, path, line, box })
  }
  for (const page of pages.values()) put.push(...page)
  return put
}

const fontFiles: Readonly<Record<FontName, string>> = {
  text: 'barlow/400Regular/Barlow_400Regular',
  'text-bold': 'barlow/600SemiBold/Barlow_600SemiBold',
  figure: 'barlow-condensed/500Medium/BarlowCondensed_500Medium',
  'figure-bold': 'barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold',
  other: 'noto-sans/400Regular/NotoSans_400Regular',
  'other-bold': 'noto-sans/600SemiBold/NotoSans_600SemiBold',
}

const fontBytes = new Map(
  Object.entries(fontFiles).map(([name, file]) => [
    name,
    readFileSync(join(process.cwd(), 'node_modules', '@expo-google-fonts', `${file}.ttf`)),
  ]),
)

export type Written = { readonly bytes: Uint8Array; readonly ms: number }

/**
 * The same content, written as pdfkit's guide has it. The clock starts when its fonts are parsed, as ours are kept; it is
 * spared, too, what our sheet does besides: breaking lines, tables, curves, tabular figures.
 */
export function byPdfkit(content: readonly Put[]): Promise<Written> {
  return new Promise((resolve, reject) => {
    const doc = new PDFDocument({ autoFirstPage: false, info: { Title: 'Spec sheet' } })
    const parts: Buffer[] = []
    doc.on('data', (part: Buffer) => parts.push(part))
    doc.on('error', reject)
    const used = new Set(content.flatMap((put) => (put.kind === 'text' ? [put.face] : [])))
    for (const face of used) doc.registerFont(face, fontBytes.get(face)).font(face)
    const start = performance.now()
    doc.on('end', () => resolve({ ms: performance.now() - start, bytes: new Uint8Array(Buffer.concat(parts)) }))
    for (const put of content) write(doc, put)
    doc.end()
  })
}

function write(doc: PDFKit.PDFDocument, put: Put): void {
  switch (put.kind) {
    case 'page':
      doc.addPage({ size: [...put.size], margin: 0 })
      break
    case 'text': {
      if (put.turnDeg !== 0) doc.save().rotate(put.turnDeg, { origin: [put.x, put.y] })
      doc
        .font(put.face)
        .fontSize(put.size)
        .fillColor(put.colour)
        .text(put.text, put.x, put.y, { lineBreak: false, baseline: 'alphabetic' })
      if (put.turnDeg !== 0) doc.restore()
      break
    }
    case 'path': {
      doc.save().translate(put.x, put.y).scale(put.scale).path(put.d)
      if (put.dash.length > 0) doc.dash(put.dash[0] ?? 1, { space: put.dash[1] ?? 1 })
      paint(doc, put, put.width)
      doc.restore()
      break
    }
    case 'box':
      doc.save().rect(put.x, put.y, put.width, put.height)
      paint(doc, put, put.lineWidth)
      doc.restore()
      break
    case 'line':
      doc
        .save()
        .lineWidth(put.width)
        .moveTo(...put.from)
        .lineTo(...put.to)
        .stroke(put.colour)
        .restore()
  }
}

type Paint = { readonly fill: string | null; readonly stroke: string | null }

function paint(doc: PDFKit.PDFDocument, { fill, stroke }: Paint, lineWidth: number): void {
  if (stroke !== null) doc.lineWidth(lineWidth)
  if (fill !== null && stroke !== null) doc.fillAndStroke(fill, stroke)
  else if (fill !== null) doc.fill(fill)
  else if (stroke !== null) doc.stroke(stroke)
}

export type Compared = { readonly oursMs: number; readonly theirsMs: number; readonly ratio: number }

/** Both by turns, the first passes thrown away; medians. */
async function compare(write: Writer, passes: number): Promise<Compared> {
  const content = await contentOf(write)
  const [ours, theirs]: [number[], number[]] = [[], []]
  for (let pass = -warmUp; pass < passes; pass++) {
    const start = performance.now()
    await write()
    const end = performance.now()
    const { ms } = await byPdfkit(content)
    if (pass < 0) continue
    ours.push(end - start)
    theirs.push(ms)
  }
  const [oursMs, theirsMs] = [median(ours), median(theirs)]
  return { oursMs, theirsMs, ratio: oursMs / theirsMs }
}

const warmUp = 5

export async function paperFigures(): Promise<Figure[]> {
  const figures: Figure[] = []
  for (const [name, write] of Object.entries(papers)) {
    const { oursMs, theirsMs, ratio } = await compare(write, 25)
    const work = `${name}, against pdfkit (${oursMs.toFixed(1)} and ${theirsMs.toFixed(1)} ms)`
    figures.push({ work, measured: ratio, unit: 'times as long', goal: '≤ 0.35', met: ratio <= 0.35 })
  }
  return figures
}
