import type { Drawing, Mark, TextMark } from '@/lib/drawing/marks'
import { drawWords, paperColours, pointsPerMm, type Canvas } from './canvas'
import type { Face } from './fonts'

/** Draws the marks with the drawing's top left corner at (x, y), in millimetres, scaled. */
export function drawMarks(canvas: Canvas, drawing: Drawing, xMm: number, yMm: number, scale = 1): void {
  for (const mark of drawing.marks) drawMark(canvas, mark, xMm, yMm, scale)
}

function drawMark(canvas: Canvas, mark: Mark, xMm: number, yMm: number, scale: number): void {
  if (mark.kind === 'text') {
    drawWords(canvas, mark.text, xMm + mark.x * scale, yMm + mark.y * scale, {
      face: faceOf(mark),
      sizeMm: mark.sizeMm * scale,
      tone: mark.tone,
      anchor: mark.anchor,
      turnDeg: mark.turnDeg,
    })
    return
  }
  const { d, fill, stroke } = mark
  canvas.page.drawSvgPath(d, {
    x: xMm * pointsPerMm,
    y: canvas.page.getHeight() - yMm * pointsPerMm,
    scale: scale * pointsPerMm,
    ...(fill && { color: paperColours[fill] }),
    ...(stroke && { borderColor: paperColours[stroke.tone], borderWidth: stroke.widthMm }),
    ...(stroke?.dashMm && { borderDashArray: [...stroke.dashMm] }),
  })
}

const faceOf = ({ face, bold }: TextMark): Face => (bold ? `${face}-bold` : face)
