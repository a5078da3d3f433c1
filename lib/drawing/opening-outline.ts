import type { OutlinePoint } from '@/lib/core/cut/outline'
import { formatFigure } from '@/lib/core/units/format-figure'
import {
  ellipsePath,
  linePath,
  outlined,
  polygonPath,
  stroked,
  text,
  type Drawing,
  type Mark,
  type Point,
} from './marks'

export type OpeningDrawing = {
  readonly points: readonly OutlinePoint[]
  readonly areaIn2: number
  readonly centreIn: number
  readonly milledWidthIn: number
  readonly deepEdge: 'exhaust' | 'intake'
}

/** Half size: a whole deck across is as tall as a hand. */
const mmPerIn = 12.7
const sideMm = 14
const edgeMm = 8
const footMm = 9
const textMm = 3.4

/**
 * One chamber's opening on the deck, half size both ways: seen from below with the intake edge at the foot and end 1 at
 * the left, as the plan of the head is. The traced points are dots; the dashed line lies at the opening's centre.
 */
export function openingOutline(opening: OpeningDrawing): Drawing {
  const { points, centreIn, milledWidthIn, deepEdge } = opening
  const alongIn = points.map(({ yIn }) => yIn)
  const firstIn = Math.min(0, ...alongIn)
  const lengthMm = (Math.max(...alongIn) - firstIn) * mmPerIn
  const deckMm = milledWidthIn * mmPerIn
  const intakeIsShallow = deepEdge === 'exhaust'
  const across = (xIn: number) => edgeMm + (intakeIsShallow ? milledWidthIn - xIn : xIn) * mmPerIn
  const place = ({ xIn, yIn }: OutlinePoint): Point => [sideMm + (yIn - firstIn) * mmPerIn, across(xIn)]
  const [left, right] = [sideMm / 2, sideMm + lengthMm + sideMm / 2]
  const level = (xIn: number) => linePath([left, across(xIn)], [right, across(xIn)])
  const beside = (xIn: number, foot: boolean): Point => [left, across(xIn) + (foot ? textMm + 1.6 : -1.6)]
  const shallow = intakeIsShallow ? 'intake' : 'exhaust'
  return {
    widthMm: lengthMm + 2 * sideMm,
    heightMm: deckMm + 2 * edgeMm + footMm,
    title: 'Opening of the chamber',
    description: inWords(opening),
    marks: [
      ...stroked(level(0) + level(milledWidthIn), 'ink', 0.6),
      ...outlined(polygonPath(points.map(place)), 'ink', 0.4),
      ...stroked(points.map((point) => ellipsePath(place(point), 0.45)).join(''), 'ink', 0.3),
      ...stroked(level(centreIn), 'ink', 0.3, [2, 1.2]),
      ...text(beside(0, intakeIsShallow), `shallow edge, ${shallow}`, textMm),
      ...text(beside(milledWidthIn, !intakeIsShallow), `deep edge, ${deepEdge}`, textMm),
      ...text([sideMm + lengthMm / 2, across(centreIn) - 1.4], `centre ${formatFigure(centreIn, 'length')}`, textMm, {
        anchor: 'middle',
      }),
      ...text([left - 1.6, edgeMm + deckMm / 2], 'end 1', textMm, { anchor: 'middle', turnDeg: -90 }),
      ...oneInch([right - mmPerIn, deckMm + 2 * edgeMm + footMm / 2]),
    ],
  }
}

/** What the drawing is measured with. */
function oneInch([x, y]: Point): Mark[] {
  const end = (at: number) => linePath([at, y - 1.2], [at, y + 1.2])
  return [
    ...stroked(linePath([x, y], [x + mmPerIn, y]) + end(x) + end(x + mmPerIn), 'ink', 0.4),
    ...text([x - 1.6, y + textMm * 0.35], '1 in', textMm, { anchor: 'end' }),
  ]
}

function inWords({ points, areaIn2, centreIn }: OpeningDrawing): string {
  const span = (of: (point: OutlinePoint) => number) => {
    const [least, most] = [Math.min(...points.map(of)), Math.max(...points.map(of))]
    return `from ${formatFigure(least, 'length')} to ${formatFigure(most, 'length')}`
  }
  const where = `${span(({ xIn }) => xIn)} off the shallow edge, ${span(({ yIn }) => yIn)} off end 1`
  return `${points.length} traced points, ${where}. Area ${formatFigure(areaIn2, 'area')}, centre ${formatFigure(centreIn, 'length')} off the shallow edge.`
}
