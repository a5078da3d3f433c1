import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { Marks } from '@/app/_components/charts/marks-svg'
import type { Drawing } from '@/lib/drawing/marks'
import { drawMarks } from '@/lib/pdf/draw-marks'
import { addPage, closeFile, openFile } from '@/lib/pdf/paper-file'
import { setting } from '@/tests/pdf/sample-papers'

/** A mark as it is found again in what a renderer wrote, in millimetres of the drawing, y downward. */
export type SeenPath = {
  readonly kind: 'path'
  readonly filled: boolean
  /** Stroke width and dashes; null: no stroke. */
  readonly stroke: { readonly widthMm: number; readonly dashMm: readonly number[] } | null
  readonly ops: string
  /** All coordinates in order. */
  readonly at: readonly number[]
}
export type SeenText = {
  readonly kind: 'text'
  readonly text: string
  /** Where the words are held: their start, middle or end on the baseline. */
  readonly at: readonly [x: number, y: number]
  readonly anchor: 'start' | 'middle' | 'end'
  readonly sizeMm: number
  /** Clockwise. */
  readonly turnDeg: number
}
export type Seen = SeenPath | SeenText

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'" }
const decoded = (words: string): string => words.replace(/&([^;]+);/g, (whole, name: string) => entities[name] ?? whole)

const attributesOf = (tag: string): ReadonlyMap<string, string> =>
  new Map([...tag.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, decoded(value)]))

const numbersOf = (words: string): number[] => (words.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number)

/** The marks of the SVG that a page shows, from its text. */
export function marksOnScreen(drawing: Drawing): Seen[] {
  const svg = renderToStaticMarkup(createElement(Marks, { drawing }))
  return [...svg.matchAll(/<path([^>]*?)\/?>|<text([^>]*)>([^<]*)<\/text>/g)].map(([, path, text = '', words = '']) => {
    if (path !== undefined) return svgPath(attributesOf(path))
    const attributes = attributesOf(text)
    return {
      kind: 'text',
      text: decoded(words),
      at: [Number(attributes.get('x')), Number(attributes.get('y'))],
      anchor: anchorOf(attributes.get('text-anchor')),
      sizeMm: Number(attributes.get('font-size')),
      turnDeg: numbersOf(attributes.get('transform') ?? '0')[0] ?? 0,
    }
  })
}

const anchorOf = (value: string | undefined): SeenText['anchor'] =>
  value === 'middle' || value === 'end' ? value : 'start'

function svgPath(attributes: ReadonlyMap<string, string>): SeenPath {
  const d = attributes.get('d') ?? ''
  return {
    kind: 'path',
    filled: attributes.get('fill') !== 'none',
    stroke: attributes.has('stroke')
      ? {
          widthMm: Number(attributes.get('stroke-width')),
          dashMm: numbersOf(attributes.get('stroke-dasharray') ?? ''),
        }
      : null,
    ops: d.replace(/[^A-Za-z]/g, ''),
    at: numbersOf(d),
  }
}

const pointsPerMm = 72 / 25.4
const pageMm = 400

export type Placed = { readonly xMm: number; readonly yMm: number; readonly scale: number }

/** The drawing alone on a page, as a paper draws it. */
export function onPaper(drawing: Drawing, { xMm, yMm, scale }: Placed): Promise<Uint8Array> {
  const file = openFile({ title: drawing.title, shopName: '', language: 'en', setting })
  drawMarks(addPage(file, pageMm, pageMm), drawing, xMm, yMm, scale)
  return closeFile(file)
}

type Matrix = readonly [number, number, number, number, number, number]
const identity: Matrix = [1, 0, 0, 1, 0, 0]

/** First the inner one, then the outer: as content streams nest them. */
const inside = (outer: Matrix, [a, b, c, d, e, f]: Matrix): Matrix => {
  const [A, B, C, D, E, F] = outer
  return [A * a + C * b, B * a + D * b, A * c + C * d, B * c + D * d, A * e + C * f + E, B * e + D * f + F]
}

const asMatrix = (list: ArrayLike<unknown>): Matrix =>
  [0, 1, 2, 3, 4, 5].map((i) => Number(list[i])) as unknown as Matrix

/** Path data as pdfjs flattens it: 0 move, 1 line, 2 curve, 4 close, each before its coordinates. */
const pathOps: Readonly<Record<number, readonly [letter: string, coordinates: number]>> = {
  0: ['M', 2],
  1: ['L', 2],
  2: ['C', 6],
  4: ['Z', 0],
}

const paints: Readonly<Record<number, { readonly filled: boolean; readonly stroked: boolean }>> = {
  [OPS.stroke]: { filled: false, stroked: true },
  [OPS.closeStroke]: { filled: false, stroked: true },
  [OPS.fill]: { filled: true, stroked: false },
  [OPS.eoFill]: { filled: true, stroked: false },
  [OPS.fillStroke]: { filled: true, stroked: true },
  [OPS.closeFillStroke]: { filled: true, stroked: true },
}

type State = { readonly matrix: Matrix; readonly lineWidth: number; readonly dash: readonly number[] }
type Run = {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly sizeMm: number
  readonly turnDeg: number
}

/**
 * The marks of a page, from the operators of its content as an independent reader hands them out. Where words are held
 * is looked for as the screen holds them.
 */
export async function marksOnPaper(bytes: Uint8Array, screen: readonly Seen[], placed: Placed): Promise<Seen[]> {
  const doc = await getDocument({ data: bytes.slice(), verbosity: 0, disableFontFace: true }).promise
  const { fnArray, argsArray } = await (await doc.getPage(1)).getOperatorList()
  await doc.destroy()
  const toDrawing = (x: number, y: number): [number, number] => [
    (x / pointsPerMm - placed.xMm) / placed.scale,
    (pageMm - y / pointsPerMm - placed.yMm) / placed.scale,
  ]
  const lengthMm = (points: number): number => points / pointsPerMm / placed.scale
  const kept: State[] = []
  let state: State = { matrix: identity, lineWidth: 1, dash: [] }
  let [size, text] = [0, identity]
  const found: (SeenPath | Run)[] = []
  fnArray.forEach((fn: number, i: number) => {
    const args = (argsArray[i] ?? []) as unknown[]
    if (fn === OPS.save) kept.push(state)
    else if (fn === OPS.restore) state = kept.pop() ?? state
    else if (fn === OPS.transform) state = { ...state, matrix: inside(state.matrix, asMatrix(args)) }
    else if (fn === OPS.setLineWidth) state = { ...state, lineWidth: Number(args[0]) }
    else if (fn === OPS.setDash) state = { ...state, dash: (args[0] as number[]).slice() }
    else if (fn === OPS.setFont) size = Number(args[1])
    else if (fn === OPS.setTextMatrix) text = asMatrix(args[0] as ArrayLike<unknown>)
    else if (fn === OPS.constructPath) found.push(pdfPath(args, state, toDrawing, lengthMm))
    else if (fn === OPS.showText) found.push(pdfRun(args[0] as unknown[], state, text, size, toDrawing, lengthMm))
  })
  return joined(found, screen)
}

type ToDrawing = (x: number, y: number) => [number, number]

function pdfPath(
  args: readonly unknown[],
  { matrix, lineWidth, dash }: State,
  toDrawing: ToDrawing,
  lengthMm: (points: number) => number,
): SeenPath {
  const paint = paints[Number(args[0])] ?? { filled: false, stroked: false }
  const data = (args[1] as readonly (Float32Array | null)[])[0] ?? new Float32Array()
  const at: number[] = []
  let ops = ''
  for (let i = 0; i < data.length;) {
    const [letter, count] = pathOps[data[i] ?? NaN] ?? ['?', 0]
    ops += letter
    for (let c = 1; c <= count; c += 2)
      at.push(...toDrawing(...placeOf(matrix, data[i + c] ?? NaN, data[i + c + 1] ?? NaN)))
    i += 1 + count
  }
  const scaled = Math.hypot(matrix[0], matrix[1])
  const stroke = paint.stroked
    ? { widthMm: lengthMm(lineWidth * scaled), dashMm: dash.map((part) => lengthMm(part * scaled)) }
    : null
  return { kind: 'path', filled: paint.filled, stroke, ops, at }
}

const placeOf = ([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] => [
  a * x + c * y + e,
  b * x + d * y + f,
]

function pdfRun(
  glyphs: readonly unknown[],
  { matrix }: State,
  text: Matrix,
  size: number,
  toDrawing: ToDrawing,
  lengthMm: (points: number) => number,
): Run {
  const whole = inside(matrix, text)
  const [x, y] = toDrawing(whole[4], whole[5])
  const scaled = Math.hypot(whole[0], whole[1])
  const letters = glyphs.filter((glyph) => typeof glyph === 'object' && glyph !== null)
  const units = letters.reduce((sum: number, glyph) => sum + Number(Reflect.get(glyph, 'width')), 0)
  return {
    text: letters.map((glyph) => String(Reflect.get(glyph, 'unicode'))).join(''),
    x,
    y,
    width: lengthMm(((units * size) / 1000) * scaled),
    sizeMm: lengthMm(size * scaled),
    turnDeg: (-Math.atan2(whole[1], whole[0]) * 180) / Math.PI,
  }
}

const shareBefore = { start: 0, middle: 0.5, end: 1 } as const

/**
 * Words that took several fonts put together again. A file says where words start; where they are held follows from
 * their width in the embedded fonts and from how the screen has them held.
 */
function joined(found: readonly (SeenPath | Run)[], screen: readonly Seen[]): Seen[] {
  const held = screen.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
  const seen: Seen[] = []
  const runs: Run[] = []
  for (const part of found) {
    if ('kind' in part) {
      seen.push(part)
      continue
    }
    runs.push(part)
    const text = runs.map((run) => run.text).join('')
    const wanted = held[seen.filter(({ kind }) => kind === 'text').length]
    if (wanted && text.length < wanted.text.length) continue
    const first = runs[0] ?? part
    const anchor = wanted?.anchor ?? 'start'
    const along = runs.reduce((sum, run) => sum + run.width, 0) * shareBefore[anchor]
    const turn = (first.turnDeg * Math.PI) / 180
    const at = [first.x + along * Math.cos(turn), first.y + along * Math.sin(turn)] as const
    seen.push({ kind: 'text', text, at, anchor, sizeMm: first.sizeMm, turnDeg: first.turnDeg })
    runs.length = 0
  }
  return seen
}

/** What differs by more than so many millimetres (or degrees, of a turn), in words; empty: the same marks in the same order. */
export function differences(a: readonly Seen[], b: readonly Seen[], withinMm: number): string[] {
  if (a.length !== b.length) return [`${a.length} marks and ${b.length}`]
  return a.flatMap((one, i) => {
    const other = b[i]
    if (!other) return [`mark ${i} is missing`]
    const off = offOf(one, other)
    return off === null
      ? [`mark ${i} is another: ${nameOf(one)} and ${nameOf(other)}`]
      : off > withinMm
        ? [`mark ${i}, ${nameOf(one)}, is off by ${off.toFixed(3)}`]
        : []
  })
}

const nameOf = (seen: Seen): string =>
  seen.kind === 'text'
    ? `"${seen.text}"`
    : `${seen.filled ? 'filled ' : ''}${seen.stroke ? 'stroked ' : ''}path ${seen.ops.slice(0, 12)}`

/** The greatest difference of any of their measures; null: not the same kind of thing. */
function offOf(one: Seen, other: Seen): number | null {
  if (one.kind === 'text' || other.kind === 'text') {
    if (one.kind !== 'text' || other.kind !== 'text' || one.text !== other.text) return null
    return most([...pairs(one.at, other.at), one.sizeMm - other.sizeMm, one.turnDeg - other.turnDeg])
  }
  if (one.ops !== other.ops || one.filled !== other.filled) return null
  if ((one.stroke === null) !== (other.stroke === null)) return null
  const [dash, otherDash] = [one.stroke?.dashMm ?? [], other.stroke?.dashMm ?? []]
  if (dash.length !== otherDash.length || one.at.length !== other.at.length) return null
  const width = (one.stroke?.widthMm ?? 0) - (other.stroke?.widthMm ?? 0)
  return most([...pairs(one.at, other.at), ...pairs(dash, otherDash), width])
}

const pairs = (a: readonly number[], b: readonly number[]): number[] => a.map((value, i) => value - (b[i] ?? NaN))

const most = (differs: readonly number[]): number =>
  differs.reduce((largest, value) => (Number.isNaN(value) ? Infinity : Math.max(largest, Math.abs(value))), 0)
