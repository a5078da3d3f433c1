import { degrees, rgb, type Color, type PDFPage } from 'pdf-lib'
import type { Tone } from '@/lib/drawing/marks'
import { wordsWidth, type Face, type Fonts } from './fonts'
import { radians } from '@/lib/core/units/degrees'

export const pointsPerMm = 72 / 25.4

/** Colours of paper. Brass is for the tag plate alone, red for "stop" alone. */
export const paperColours: Readonly<Record<Tone, Color>> = {
  ink: rgb(0.1, 0.12, 0.14),
  faint: rgb(0.42, 0.46, 0.49),
  brass: rgb(0.79, 0.64, 0.36),
  'on-brass': rgb(0.09, 0.07, 0.02),
  stop: rgb(0.61, 0.05, 0.09),
  ground: rgb(1, 1, 1),
}

/** A page measured in millimetres from its top left corner. */
export type Canvas = {
  readonly page: PDFPage
  readonly fonts: Fonts
}

export type TextStyle = {
  readonly face: Face
  readonly sizeMm: number
  readonly tone?: Tone
  readonly anchor?: 'start' | 'middle' | 'end'
  /** Clockwise about the point. */
  readonly turnDeg?: number
}

const shareBefore = { start: 0, middle: 0.5, end: 1 } as const

/** Sets words on one line with their baseline at (x, y). */
export function drawWords(canvas: Canvas, words: string, xMm: number, yMm: number, style: TextStyle): void {
  const { page, fonts } = canvas
  const turn = radians(style.turnDeg ?? 0)
  const back = shareBefore[style.anchor ?? 'start'] * wordsWidth(words, style.face) * style.sizeMm
  let [x, y] = [xMm - back * Math.cos(turn), yMm - back * Math.sin(turn)]
  const size = style.sizeMm * pointsPerMm
  for (const run of fonts.runs(words, style.face)) {
    page.drawText(run.text, {
      x: x * pointsPerMm,
      y: page.getHeight() - y * pointsPerMm,
      size,
      font: run.font,
      color: paperColours[style.tone ?? 'ink'],
      ...(turn === 0 ? {} : { rotate: degrees(-(style.turnDeg ?? 0)) }),
    })
    const runMm = run.width * style.sizeMm
    x += runMm * Math.cos(turn)
    y += runMm * Math.sin(turn)
  }
}
