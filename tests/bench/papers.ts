import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { PDFPage } from 'pdf-lib'
import PDFDocument from 'pdfkit'
import { jobSheet } from '@/lib/pdf/job-sheet'
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

const colourOf = (colour: unknown): string | null => {
  if (colour === null || typeof colour !== 'object') return null
  const part = (name: string) => Math.round(Number(Reflect.get(colour, name)) * 255)
  return `#${['red', 'green', 'blue'].map((name) => part(name).toString(16).padStart(2, '0')).join('')}`
}

/** What our paper puts on its pages, from the top, as it is being written: content to be written by others too. */
export async function contentOf(write: Writer): Promise<readonly Put[]> {
  const put: Put[] = []
  const pages = new Map<PDFPage, Put[]>()
  const on = (page: PDFPage): Put[] => {
    const known = pages.get(page)
    if (known) return known
    const fresh: Put[] = [{ kind: 'page', size: [page.getWidth(), page.getHeight()] }]
    pages.set(page, fresh)
    return fresh
  }
  const { drawText, drawSvgPath, drawLine, drawRectangle } = PDFPage.prototype
  PDFPage.prototype.drawText = function (text, options = {}) {
    const rotate = options.rotate?.angle ?? 0
    on(this).push({
      kind: 'text',
      text,
      face: options.font?.name ?? '',
      size: options.size ?? 0,
      x: options.x ?? 0,
      y: this.getHeight() - (options.y ?? 0),
      turnDeg: -rotate,
      colour: colourOf(options.color) ?? '#000000',
    })
    drawText.call(this, text, options)
  }
  PDFPage.prototype.drawSvgPath = function (d, options = {}) {
    on(this).push({
      kind: 'path',
      d,
      x: options.x ?? 0,
      y: this.getHeight() - (options.y ?? 0),
      scale: Number(options.scale ?? 1),
      fill: colourOf(options.color),
      stroke: colourOf(options.borderColor),
      width: options.borderWidth ?? 0,
      dash: options.borderDashArray ?? [],
    })
    drawSvgPath.call(this, d, options)
  }
  PDFPage.prototype.drawLine = function (options) {
    const at = ({ x, y }: { x: number; y: number }) => [x, this.getHeight() - y] as const
    on(this).push({
      kind: 'line',
      from: at(options.start),
      to: at(options.end),
      width: options.thickness ?? 1,
      colour: colourOf(options.color) ?? '#000000',
    })
    drawLine.call(this, options)
  }
  PDFPage.prototype.drawRectangle = function (options = {}) {
    const { x = 0, y = 0, width = 0, height = 0, borderWidth = 0 } = options
    const colours = { fill: colourOf(options.color), stroke: colourOf(options.borderColor) }
    on(this).push({
      kind: 'box',
      x,
      y: this.getHeight() - y - height,
      width,
      height,
      lineWidth: borderWidth,
      ...colours,
    })
    drawRectangle.call(this, options)
  }
  try {
    await write()
  } finally {
    Object.assign(PDFPage.prototype, { drawText, drawSvgPath, drawLine, drawRectangle })
  }
  for (const page of pages.values()) put.push(...page)
  return put
}

const fontFiles: Readonly<Record<string, string>> = {
  'Barlow-Regular': 'barlow/400Regular/Barlow_400Regular',
  'Barlow-SemiBold': 'barlow/600SemiBold/Barlow_600SemiBold',
  'BarlowCondensed-Medium': 'barlow-condensed/500Medium/BarlowCondensed_500Medium',
  'BarlowCondensed-SemiBold': 'barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold',
  'NotoSans-Regular': 'noto-sans/400Regular/NotoSans_400Regular',
  'NotoSans-SemiBold': 'noto-sans/600SemiBold/NotoSans_600SemiBold',
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
