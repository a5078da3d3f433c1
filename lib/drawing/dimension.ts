import { filled, linePath, polygonPath, stroked, text, type Mark, type Point } from './marks'

/** Width of words in millimetres before a face is at hand: no letter of ours is wider on the average. */
export const roughWidth = (words: string, sizeMm: number): number => words.length * sizeMm * 0.55

const thinMm = 0.2
const headMm = 2.2

/** An arrowhead whose tip is where it points to, coming from another point. */
export function arrowhead(tip: Point, from: Point, lengthMm = headMm): string {
  const [dx, dy] = [from[0] - tip[0], from[1] - tip[1]]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [dx / length, dy / length]
  const half = lengthMm / 6
  const base: Point = [tip[0] + ux * lengthMm, tip[1] + uy * lengthMm]
  return polygonPath([tip, [base[0] - uy * half, base[1] + ux * half], [base[0] + uy * half, base[1] - ux * half]])
}

/** A level dimension line with arrowheads at both ends, the figure in a gap of the line. */
export function levelDimension(fromX: number, toX: number, y: number, words: string, sizeMm: number): Mark[] {
  const middle = (fromX + toX) / 2
  const gap = roughWidth(words, sizeMm) / 2
  const from: Point = [fromX, y]
  const to: Point = [toX, y]
  return [
    ...stroked(linePath(from, [middle - gap, y]) + linePath([middle + gap, y], to), 'ink', thinMm),
    ...filled(arrowhead(from, to) + arrowhead(to, from), 'ink'),
    ...text([middle, y + sizeMm * 0.35], words, sizeMm, { anchor: 'middle' }),
  ]
}

/** A height too small to stand inside: two arrows point at it from above and from below, at the lines led out to it. */
export function gapDimension(x: number, topY: number, bottomY: number, leadX: number, tailMm: number): Mark[] {
  const [top, bottom]: readonly [Point, Point] = [
    [x, topY],
    [x, bottomY],
  ]
  const [above, below]: readonly [Point, Point] = [
    [x, topY - tailMm],
    [x, bottomY + tailMm],
  ]
  const past = x + Math.sign(x - leadX)
  const leads = [topY, bottomY].map((y) => linePath([leadX, y], [past, y])).join('')
  return [
    ...stroked(leads + linePath(above, top) + linePath(bottom, below), 'ink', thinMm),
    ...filled(arrowhead(top, above) + arrowhead(bottom, below), 'ink'),
  ]
}
