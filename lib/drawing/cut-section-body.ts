import type { SectionPoint } from '@/lib/core/clearance/rigid-motion'
import type { Frame } from './cut-section-frame'
import { hatchInside } from './cut-section-hatch'
import { isCut } from './cut-section-words'
import { within, type Contour, type CutSectionInput, type SectionGeometry } from './cut-section-types'
import { roughWidth } from './dimension'
import { at, filled, linePath, polygonPath, rectPath, stroked, text, type Mark, type Point } from './marks'
import { radians } from '@/lib/core/units/degrees'

/** Depth of the cut at a place across, by the straight line that the new deck is. */
export const newDeckAt = ({ motion }: SectionGeometry, xIn: number): SectionPoint => ({
  xIn,
  zIn: motion.flatIn + motion.slope * xIn,
})

/** The head's metal in section, what the cut takes of it, and the chamber. */
export function bodyMarks(geometry: SectionGeometry, frame: Frame, input: CutSectionInput): Mark[] {
  const { place, look } = frame
  const cut = isCut(geometry.motion)
  const deck = [newDeckAt(geometry, 0), newDeckAt(geometry, geometry.widthIn)].map(place).sort(byX)
  const [intake, exhaust] = deck as [Point, Point]
  const [intakeTop, exhaustTop] = tops(frame, input)
  const oldDeck: readonly [Point, Point] = [
    [frame.leftX, frame.deckY],
    [frame.rightX, frame.deckY],
  ]
  const chamber = geometry.chamber
  return [
    ...stroked(hatchInside([intake, intakeTop, exhaustTop, exhaust], look.hatchMm), 'faint', 0.13),
    ...stroked(linePath(intake, intakeTop) + linePath(exhaust, exhaustTop), 'ink', look.lineMm),
    ...(cut ? filled(polygonPath([intake, exhaust, oldDeck[1], oldDeck[0]]), 'ink') : []),
    ...(chamber ? filled(`${contourPath(chamber, frame)}Z`, 'ground') : []),
    ...(cut ? stroked(linePath(...oldDeck), 'ink', 0.2, [1.6, 1]) : []),
    ...stroked(linePath(intake, exhaust), 'ink', 0.25),
    ...stroked(solidDeck(geometry, frame), 'ink', look.lineMm),
  ]
}

/** Where the head is broken off, over the ports that run into it. */
export const breakMarks = (frame: Frame, input: CutSectionInput): Mark[] =>
  stroked(breakPath(...tops(frame, input)), 'ink', 0.2)

/** Chamber roof and walls, over whatever port was cleared behind it. */
export function chamberLines(chamber: Contour | null, frame: Frame): Mark[] {
  if (!chamber) return []
  const d = contourPath(chamber, frame, true)
  return chamber.sure ? stroked(d, 'ink', frame.look.lineMm) : stroked(d, 'ink', 0.3, [2, 1.2])
}

const byX = (a: Point, b: Point) => a[0] - b[0]

/** Upper ends of the sides; the intake side leans as its face does. */
function tops({ leftX, rightX, topY, deckY }: Frame, { casting }: CutSectionInput): [Point, Point] {
  const faceDeg = within(casting.intakeFaceDeg, -6, 30) ?? 0
  const inward = Math.tan(radians(faceDeg)) * (deckY - topY)
  return [
    [leftX + inward, topY],
    [rightX, topY],
  ]
}

/** A long break: thin, straight, with jogs. */
function breakPath([x1, y]: Point, [x2]: Point): string {
  const jog = 1.1
  const jogs = [0.2, 0.5, 0.8].map((share): readonly Point[] => {
    const x = x1 + (x2 - x1) * share
    return [
      [x - jog, y],
      [x - jog / 3, y - 1.6],
      [x + jog / 3, y + 1.6],
      [x + jog, y],
    ]
  })
  const points: readonly Point[] = [[x1 - 2, y], ...jogs.flat(), [x2 + 2, y]]
  return `M${points.map(at).join('L')}`
}

function contourPath({ start, pieces }: Contour, { place }: Frame, withGaps = false): string {
  const steps = pieces.map(({ to, by, mouth }) => {
    const end = at(place(to))
    if (withGaps && mouth) return `M${end}`
    return by ? `C${at(place(by[0]))} ${at(place(by[1]))} ${end}` : `L${end}`
  })
  return `M${at(place(start))}${steps.join('')}`
}

/** Stretches of the deck that are metal, across from the shallow edge. */
export function metalOf({ wallsIn, widthIn }: SectionGeometry): readonly (readonly [number, number])[] {
  if (!wallsIn) return [[0, widthIn]]
  const [from, to] = wallsIn
  return (
    [
      [0, from],
      [to, widthIn],
    ] as const
  ).filter(([a, b]) => b > a)
}

const solidDeck = (geometry: SectionGeometry, { place }: Frame): string =>
  metalOf(geometry)
    .map(([from, to]) => linePath(place(newDeckAt(geometry, from)), place(newDeckAt(geometry, to))))
    .join('')

/** A closed chamber has a pad beside it, named in a gap of the hatching where it is broad enough for the word. */
export function quenchPad(
  geometry: SectionGeometry,
  { place, look }: Frame,
  { chamberShape }: CutSectionInput,
): Mark[] {
  if (chamberShape !== 'closed' || !geometry.wallsIn) return []
  const [from, to] = metalOf(geometry).toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [0, 0]
  const [wallX, sideX] = [from === 0 ? to : from, from === 0 ? from : to].map((xIn) => place({ xIn, zIn: 0 })[0])
  const words = 'quench pad'
  const width = roughWidth(words, look.smallMm)
  if (wallX === undefined || sideX === undefined || Math.abs(wallX - sideX) < width + 4) return []
  const middle = wallX + Math.sign(sideX - wallX) * (width / 2 + 2)
  const y = place(newDeckAt(geometry, (from + to) / 2))[1] - 3
  const height = look.smallMm * 1.3
  return [
    ...filled(rectPath(middle - width / 2, y - look.smallMm, width, height), 'ground'),
    ...text([middle, y], words, look.smallMm, { anchor: 'middle' }),
  ]
}
