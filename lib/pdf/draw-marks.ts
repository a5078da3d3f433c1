import type { Drawing, TextMark } from '@/lib/drawing/marks'
import { drawWords, type Canvas } from './canvas'
import type { Face } from './fonts'

/** Draws the marks with the drawing's top left corner at (x, y), in millimetres, scaled. */
export function drawMarks(canvas: Canvas, drawing: Drawing, xMm: number, yMm: number, scale = 1): void {
  for (const mark of drawing.marks) {
    if (mark.kind === 'path') {
      canvas.page.path(mark, [xMm, yMm], scale)
      continue
    }
    drawWords(canvas, mark.text, xMm + mark.x * scale, yMm + mark.y * scale, {
      face: faceOf(mark),
      sizeMm: mark.sizeMm * scale,
      tone: mark.tone,
      anchor: mark.anchor,
      turnDeg: mark.turnDeg,
    })
  }
}

const faceOf = ({ face, bold }: TextMark): Face => (bold ? `${face}-bold` : face)
