/**
 * A drawing is a short list of marks in millimetres, y downward, so that the screen and the paper show the same thing.
 * Colours are names; whoever draws the marks knows what they look like. State is never told by colour alone.
 */
export const tones = ['ink', 'faint', 'brass', 'on-brass', 'stop', 'ground'] as const
export type Tone = (typeof tones)[number]

export type Stroke = {
  readonly tone: Tone
  readonly widthMm: number
  /** Dash and gap. */
  readonly dashMm?: readonly [number, number]
}

export type PathMark = {
  readonly kind: 'path'
  /** SVG path data, absolute M, L, C and Z only. */
  readonly d: string
  readonly fill: Tone | null
  readonly stroke: Stroke | null
}

export type TextMark = {
  readonly kind: 'text'
  readonly x: number
  /** Of the baseline. */
  readonly y: number
  readonly text: string
  readonly sizeMm: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly tone: Tone
  readonly face: 'text' | 'figure'
  readonly bold: boolean
  /** Turned about (x, y), clockwise; upward reading is −90. */
  readonly turnDeg: number
}

export type Mark = PathMark | TextMark

export type Drawing = {
  readonly widthMm: number
  readonly heightMm: number
  /** What a screen reader says first. */
  readonly title: string
  /** The drawing in words. */
  readonly description: string
  readonly marks: readonly Mark[]
}

export type Point = readonly [x: number, y: number]

/** Hundredths of a millimetre are finer than any printer, and keep the path short. */
function short(value: number): string {
  const hundredths = Math.round(value * 100)
  const rest = Math.abs(hundredths % 100)
  if (rest === 0) return String(hundredths / 100)
  // Whole numbers are written far quicker than decimals, and a drawing that follows a slider writes thousands.
  const decimals = rest % 10 === 0 ? String(rest / 10) : rest < 10 ? `0${rest}` : String(rest)
  const whole = Math.trunc(hundredths / 100)
  return `${hundredths < 0 && whole === 0 ? '-' : ''}${whole}.${decimals}`
}

export const at = ([x, y]: Point): string => `${short(x)} ${short(y)}`

export const linePath = (from: Point, to: Point): string => `M${at(from)}L${at(to)}`

export const polygonPath = (corners: readonly Point[]): string => `M${corners.map(at).join('L')}Z`

export const rectPath = (x: number, y: number, width: number, height: number): string =>
  polygonPath([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ])

/** Handle length of a quarter circle as a cubic, as a share of its radius; the error is under 0.03 %. */
const quarter = (4 / 3) * (Math.SQRT2 - 1)

/** Corners rounded by quarter ellipses; with radii of half the sides, an ellipse. */
export function roundedPath(x: number, y: number, width: number, height: number, rx: number, ry = rx): string {
  const [x2, y2, kx, ky] = [x + width, y + height, rx * (1 - quarter), ry * (1 - quarter)]
  const curve = (a: Point, b: Point, c: Point) => `C${at(a)} ${at(b)} ${at(c)}`
  return [
    `M${at([x + rx, y])}L${at([x2 - rx, y])}`,
    curve([x2 - kx, y], [x2, y + ky], [x2, y + ry]),
    `L${at([x2, y2 - ry])}`,
    curve([x2, y2 - ky], [x2 - kx, y2], [x2 - rx, y2]),
    `L${at([x + rx, y2])}`,
    curve([x + kx, y2], [x, y2 - ky], [x, y2 - ry]),
    `L${at([x, y + ry])}`,
    curve([x, y + ky], [x + kx, y], [x + rx, y]),
    'Z',
  ].join('')
}

export const ellipsePath = ([x, y]: Point, rx: number, ry = rx): string =>
  roundedPath(x - rx, y - ry, 2 * rx, 2 * ry, rx, ry)

/** Strokes at 45° that fill a rectangle, as one path: shading that survives a copier. */
export function hatchPath(x: number, y: number, width: number, height: number, spacing: number): string {
  let d = ''
  for (let s = spacing; s < width + height; s += spacing) {
    const from: Point = s <= height ? [x, y + s] : [x + s - height, y + height]
    const to: Point = s <= width ? [x + s, y] : [x + width, y + s - width]
    d += linePath(from, to)
  }
  return d
}

/** The mark, unless there is nothing to draw. */
export const stroked = (d: string, tone: Tone, widthMm: number, dashMm?: readonly [number, number]): Mark[] =>
  d === '' ? [] : [{ kind: 'path', d, fill: null, stroke: { tone, widthMm, ...(dashMm ? { dashMm } : {}) } }]

export const filled = (d: string, tone: Tone): Mark[] =>
  d === '' ? [] : [{ kind: 'path', d, fill: tone, stroke: null }]

/** Filled with the ground and outlined: covers what is under it. */
export const outlined = (d: string, tone: Tone, widthMm: number, fill: Tone = 'ground'): Mark[] =>
  d === '' ? [] : [{ kind: 'path', d, fill, stroke: { tone, widthMm } }]

export function text(
  [x, y]: Point,
  words: string,
  sizeMm: number,
  more: Partial<Omit<TextMark, 'kind' | 'x' | 'y' | 'text' | 'sizeMm'>> = {},
): Mark[] {
  if (words === '') return []
  const plain = { anchor: 'start', tone: 'ink', face: 'figure', bold: false, turnDeg: 0 } as const
  return [{ kind: 'text', x, y, text: words, sizeMm, ...plain, ...more }]
}
