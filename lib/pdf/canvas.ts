import { radians } from '@/lib/core/units/degrees'
import type { Tone } from '@/lib/drawing/marks'
import { wordsWidth, type Face, type Fonts } from './fonts'
import type { Sheet } from './sheet'

/** A page, and the fonts of its paper. */
export type Canvas = {
  readonly page: Sheet
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
export function drawWords({ page, fonts }: Canvas, words: string, xMm: number, yMm: number, style: TextStyle): void {
  const { face, sizeMm, tone = 'ink', anchor = 'start', turnDeg = 0 } = style
  const runs = fonts.runs(words, face)
  const [cos, sin] = turnDeg === 0 ? [1, 0] : [Math.cos(radians(turnDeg)), Math.sin(radians(turnDeg))]
  let along = -shareBefore[anchor] * wordsWidth(words, face) * sizeMm
  for (const run of runs) {
    page.run(run, { at: [xMm + along * cos, yMm + along * sin], sizeMm, tone, turnDeg })
    along += run.width * sizeMm
  }
}
