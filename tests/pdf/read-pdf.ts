import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A paper as an independent reader sees it. */
export type ReadPdf = {
  readonly pages: readonly string[]
  readonly text: string
  readonly title: string
  readonly language: string
  /** Page size in mm. */
  readonly sizes: readonly (readonly [number, number])[]
}

const open = (bytes: Uint8Array) =>
  getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false, disableFontFace: true }).promise

const millimetres = (points: number): number => Math.round((points / 72) * 254) / 10

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const doc = await open(bytes)
  const meta = await doc.getMetadata()
  const info: unknown = meta.info
  const field = (name: string): string => {
    const value = info !== null && typeof info === 'object' ? Reflect.get(info, name) : ''
    return typeof value === 'string' ? value : ''
  }
  const pages: string[] = []
  const sizes: [number, number][] = []
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number)
    const { items } = await page.getTextContent()
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join('\n'))
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = page.view
    sizes.push([millimetres(x1 - x0), millimetres(y1 - y0)])
  }
  await doc.destroy()
  return { pages, text: pages.join('\n'), title: field('Title'), language: field('Language'), sizes }
}

export type Rectangle = {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The path of a page with the most parts, as rectangles in mm from the top: the QR code, where there is one. */
export async function busiestPath(bytes: Uint8Array): Promise<readonly Rectangle[]> {
  const doc = await open(bytes)
  const page = await doc.getPage(1)
  const { fnArray, argsArray } = await page.getOperatorList()
  let busiest: Rectangle[] = []
  let scale = 1
  fnArray.forEach((fn: number, i: number) => {
    const args: unknown = argsArray[i]
    if (fn === OPS.transform && Array.isArray(args) && typeof args[0] === 'number' && args[0] !== 1) {
      scale = Math.abs(args[0])
    }
    if (fn !== OPS.constructPath || !Array.isArray(args)) return
    const path: unknown = Array.isArray(args[1]) ? args[1][0] : null
    if (!(path instanceof Float32Array)) return
    const found = rectangles(path, scale)
    if (found.length > busiest.length) busiest = found
  })
  await doc.destroy()
  return busiest
}

/** Path data as pdfjs flattens it: 0 move, 1 line, 2 curve, 3 quadratic, 4 close, each before its coordinates. */
const coordinates: readonly number[] = [2, 2, 6, 4, 0]

function rectangles(path: Float32Array, scale: number): Rectangle[] {
  const found: Rectangle[] = []
  let xs: number[] = []
  let ys: number[] = []
  for (let i = 0; i < path.length;) {
    const op = path[i] ?? 4
    const count = coordinates[op] ?? 0
    if (op === 0) [xs, ys] = [[], []]
    for (let c = 0; c < count; c += 2) {
      xs.push(path[i + 1 + c] ?? NaN)
      ys.push(path[i + 2 + c] ?? NaN)
    }
    if (op === 4 && xs.length > 0) {
      const [x, y] = [Math.min(...xs), Math.min(...ys)]
      const mm = (scale / 72) * 25.4
      found.push({
        x: x * mm,
        y: y * mm,
        width: (Math.max(...xs) - x) * mm,
        height: (Math.max(...ys) - y) * mm,
      })
    }
    i += 1 + count
  }
  return found
}

export type Extent = readonly [left: number, bottom: number, right: number, top: number]

/** How far each letter of a paper reaches, in thousandths of its size, as the reader draws it from the embedded fonts. */
export async function drawnLetters(bytes: Uint8Array): Promise<ReadonlyMap<string, readonly Extent[]>> {
  const doc = await open(bytes)
  const letters = new Map<string, Extent[]>()
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number)
    const { fnArray, argsArray } = await page.getOperatorList()
    let font = ''
    fnArray.forEach((fn: number, i: number) => {
      const args: unknown = argsArray[i]
      if (!Array.isArray(args)) return
      if (fn === OPS.setFont) font = String(args[0])
      if (fn !== OPS.showText || !Array.isArray(args[0])) return
      for (const glyph of args[0] as unknown[]) {
        if (glyph === null || typeof glyph !== 'object') continue
        const letter = String(Reflect.get(glyph, 'unicode'))
        const outline: unknown = page.commonObjs.get(`${font}_path_${String(Reflect.get(glyph, 'fontChar'))}`)
        letters.set(letter, [...(letters.get(letter) ?? []), extentOf(outline)])
      }
    })
  }
  await doc.destroy()
  return letters
}

function extentOf(outline: unknown): Extent {
  const path: unknown = typeof outline === 'object' && outline !== null ? Reflect.get(outline, 'path') : null
  const [xs, ys]: [number[], number[]] = [[], []]
  if (path instanceof Float32Array) {
    for (let i = 0; i < path.length;) {
      const count = coordinates[path[i] ?? 4] ?? 0
      for (let c = 1; c <= count; c += 2) {
        xs.push((path[i + c] ?? NaN) * 1000)
        ys.push((path[i + c + 1] ?? NaN) * 1000)
      }
      i += 1 + count
    }
  }
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
}

export type PaperImage = {
  readonly page: number
  /** In mm, from the top left corner of the sheet. */
  readonly at: Rectangle
  readonly widthPx: number
  readonly heightPx: number
  /** Red, green and blue, row by row. */
  readonly pixels: Uint8Array
}

/** The pictures that a paper is printed with, decoded. */
export async function imagesOf(bytes: Uint8Array): Promise<readonly PaperImage[]> {
  const doc = await open(bytes)
  const found: PaperImage[] = []
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number)
    const { fnArray, argsArray } = await page.getOperatorList()
    const [, , , top = 0] = page.view
    let matrix: Matrix = identity
    const saved: Matrix[] = []
    fnArray.forEach((fn: number, i: number) => {
      const args: unknown = argsArray[i]
      if (fn === OPS.save) saved.push(matrix)
      if (fn === OPS.restore) matrix = saved.pop() ?? identity
      if (fn === OPS.transform) matrix = times(matrix, numbers(args))
      if (fn !== OPS.paintImageXObject || !Array.isArray(args)) return
      const image: unknown = page.objs.get(String(args[0]))
      const [width, , , height, x, y] = matrix
      const at = {
        x: toMm(x),
        y: toMm(top - y - height),
        width: toMm(width),
        height: toMm(height),
      }
      found.push({ page: number, at, ...decodedImage(image) })
    })
  }
  await doc.destroy()
  return found
}

type Matrix = readonly [number, number, number, number, number, number]
const identity: Matrix = [1, 0, 0, 1, 0, 0]
const toMm = (points: number): number => (points / 72) * 25.4

function numbers(args: unknown): Matrix {
  const all = Array.from(args as ArrayLike<number>)
  return [all[0] ?? 1, all[1] ?? 0, all[2] ?? 0, all[3] ?? 1, all[4] ?? 0, all[5] ?? 0]
}

/** `inner` is done first. */
const times = ([a, b, c, d, e, f]: Matrix, [a2, b2, c2, d2, e2, f2]: Matrix): Matrix => [
  a * a2 + c * b2,
  b * a2 + d * b2,
  a * c2 + c * d2,
  b * c2 + d * d2,
  a * e2 + c * f2 + e,
  b * e2 + d * f2 + f,
]

function decodedImage(image: unknown): Pick<PaperImage, 'widthPx' | 'heightPx' | 'pixels'> {
  if (typeof image !== 'object' || image === null) throw new Error('The reader has no such picture')
  const field = (name: string): unknown => Reflect.get(image, name)
  const [width, height, data] = [field('width'), field('height'), field('data')]
  // 2: three bytes a pixel, as the reader counts its kinds.
  if (field('kind') !== 2 || !ArrayBuffer.isView(data)) throw new Error('The reader has it in another kind')
  return {
    widthPx: Number(width),
    heightPx: Number(height),
    pixels: new Uint8Array(data.buffer, data.byteOffset, data.byteLength).slice(),
  }
}
