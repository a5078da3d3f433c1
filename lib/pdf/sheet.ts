import type { PDFContext, PDFRef } from 'pdf-lib'
import { radians } from '@/lib/core/units/degrees'
import type { PathMark, Point, Tone } from '@/lib/drawing/marks'
import type { Run } from './fonts'

export const pointsPerMm = 72 / 25.4

/** Colours of paper: red, green and blue. Brass is for the tag plate alone, red for "stop" alone. */
export const paperColours: Readonly<Record<Tone, readonly [number, number, number]>> = {
  ink: [0.1, 0.12, 0.14],
  faint: [0.42, 0.46, 0.49],
  brass: [0.79, 0.64, 0.36],
  'on-brass': [0.09, 0.07, 0.02],
  stop: [0.61, 0.05, 0.09],
  ground: [1, 1, 1],
}

const colourOf = (tone: Tone): string => paperColours[tone].join(' ')

/** Thousandths of a point are finer than any printer, and keep the content short. */
const points = (mm: number): string => String(Math.round(mm * pointsPerMm * 1000) / 1000)

/** Where words begin, how large, in which colour, turned clockwise about where they begin. */
export type SetAt = {
  readonly at: Point
  readonly sizeMm: number
  readonly tone: Tone
  readonly turnDeg: number
}

export type Box = {
  readonly at: Point
  readonly widthMm: number
  readonly heightMm: number
  readonly lineMm: number
}

export type Picture = {
  /** As the content of its page calls it. */
  readonly name: string
  /** Writes it into the file. */
  readonly embed: (context: PDFContext) => PDFRef
}

const operators: Readonly<Record<string, string>> = { M: 'm', L: 'l', C: 'c', Z: 'h' }

/** Path data as a page has it: the same numbers, each operator behind its own. */
const pathOperators = (d: string): string =>
  d.replace(/([MLCZ])([^MLCZ]*)/g, (_, letter: string, numbers: string) => `${numbers} ${operators[letter]}\n`)

/** Clockwise, as the first four numbers of a matrix. */
function turned(deg: number): string {
  if (deg === 0) return '1 0 0 1'
  const [cos, sin] = [Math.cos(radians(deg)), Math.sin(radians(deg))]
  return [cos, -sin, sin, cos].map((part) => part.toFixed(6)).join(' ')
}

/** One page, written in the operators of PDF (ISO 32000-1, 8 and 9). Lengths in millimetres from its top left corner. */
export class Sheet {
  readonly pictures: Picture[] = []
  #content = ''
  #tone: Tone | null = null
  #font = ''

  constructor(
    readonly widthMm: number,
    readonly heightMm: number,
  ) {}

  get content(): string {
    return this.#content
  }

  /** Sets a run with its baseline beginning at a point. */
  run(run: Run, { at, sizeMm, tone, turnDeg }: SetAt): void {
    if (tone !== this.#tone) this.#content += `${colourOf(tone)} rg\n`
    this.#tone = tone
    const font = `/${run.font} ${sizeMm * pointsPerMm} Tf`
    if (font !== this.#font) this.#content += `${font}\n`
    this.#font = font
    this.#content += `BT ${turned(turnDeg)} ${this.#place(at)} Tm <${run.codes}> Tj ET\n`
  }

  /** Draws path data with its own (0, 0) at a point, scaled. */
  path({ d, fill, stroke }: PathMark, at: Point, scale: number): void {
    const by = scale * pointsPerMm
    this.#content += [
      'q',
      fill && `${colourOf(fill)} rg`,
      stroke && `${colourOf(stroke.tone)} RG ${stroke.widthMm} w`,
      stroke?.dashMm && `[${stroke.dashMm.join(' ')}] 0 d`,
      `${by} 0 0 ${-by} ${this.#place(at)} cm`,
      `${pathOperators(d)}${fill ? (stroke ? 'B' : 'f') : 'S'} Q\n`,
    ]
      .filter(Boolean)
      .join('\n')
  }

  line(from: Point, to: Point, tone: Tone, widthMm: number): void {
    this.#content += `q ${colourOf(tone)} RG ${points(widthMm)} w ${this.#place(from)} m ${this.#place(to)} l S Q\n`
  }

  /** The outline of a box with its top left corner at a point. */
  box({ at: [x, y], widthMm, heightMm, lineMm }: Box): void {
    const bottomLeft = this.#place([x, y + heightMm])
    const size = `${points(widthMm)} ${points(heightMm)}`
    this.#content += `q ${colourOf('ink')} RG ${points(lineMm)} w ${bottomLeft} ${size} re S Q\n`
  }

  /** A picture with its top left corner at a point. */
  picture(picture: Picture, [x, y]: Point, widthMm: number, heightMm: number): void {
    this.pictures.push(picture)
    const size = `${points(widthMm)} 0 0 ${points(heightMm)}`
    this.#content += `q ${size} ${this.#place([x, y + heightMm])} cm /${picture.name} Do Q\n`
  }

  /** Draws smaller as a whole, a point staying where it is: what is drawn is given the point as it is before. */
  scaled(share: number, [x, y]: Point, draw: (at: Point) => void): void {
    const [tone, font] = [this.#tone, this.#font]
    this.#content += `q ${share} 0 0 ${share} 0 0 cm\n`
    draw([x / share, this.heightMm - (this.heightMm - y) / share])
    this.#content += 'Q\n'
    this.#tone = tone
    this.#font = font
  }

  #place([x, y]: Point): string {
    return `${points(x)} ${points(this.heightMm - y)}`
  }
}
