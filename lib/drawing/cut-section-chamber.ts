import type { SectionPoint } from '@/lib/core/clearance/rigid-motion'
import { ccPerIn3 } from '@/lib/core/units/factors'
import {
  within,
  type Contour,
  type ContourPiece,
  type CutSectionInput,
  type PlacedValve,
  type SectionGeometry,
  type SectionOpening,
} from './cut-section-types'
import { radians } from '@/lib/core/units/degrees'

/** How far the chamber's opening reaches across the deck: as traced, or as a circle of its area, or of its perimeter. */
export function openingOf(
  { casting, outline = [] }: Pick<CutSectionInput, 'casting' | 'outline'>,
  widthIn: number,
): SectionOpening | null {
  const onDeck = (fromIn: number, toIn: number, source: SectionOpening['source']) => {
    const [from, to] = [Math.max(0, fromIn), Math.min(widthIn, toIn)]
    return to - from > 0.2 ? { fromIn: from, toIn: to, source } : null
  }
  const xs = outline.map(({ xIn }) => xIn)
  if (xs.length >= 3 && xs.every(Number.isFinite)) return onDeck(Math.min(...xs), Math.max(...xs), 'outline')
  const centreIn = within(casting.openingCentreIn, 0, widthIn)
  if (centreIn === null) return null
  const areaIn2 = within(casting.openingAreaIn2, 0.5, 40)
  const perimeterIn = within(casting.perimeterIn, 1, 30)
  if (areaIn2 !== null) {
    const radiusIn = Math.sqrt(areaIn2 / Math.PI)
    return onDeck(centreIn - radiusIn, centreIn + radiusIn, 'area')
  }
  if (perimeterIn === null) return null
  const radiusIn = perimeterIn / (2 * Math.PI)
  return onDeck(centreIn - radiusIn, centreIn + radiusIn, 'perimeter')
}

const widest = ({ circles }: PlacedValve): readonly [SectionPoint, SectionPoint] =>
  circles[0]?.ends ?? [
    { xIn: 0, zIn: 0 },
    { xIn: 0, zIn: 0 },
  ]

/** Whether two valves share so much of the section that one must stand behind the other. */
export function behind(a: PlacedValve, b: PlacedValve): boolean {
  const [left, right] = inOrder([a, b]).map(widest)
  return left !== undefined && right !== undefined && left[1].xIn > right[0].xIn + sameIn
}

const sameIn = 0.02
const inOrder = (valves: readonly PlacedValve[]) => valves.toSorted((a, b) => a.centre.xIn - b.centre.xIn)

/** Between a seat's edge and the wall beside it, where nothing better is known. */
const besideSeatIn = 0.05

/** How soon a wall bends over: an open chamber slopes down wide, a closed one has steep walls. */
const steepness = { open: 0.32, closed: 0.72 } as const

export type ChamberDrawn = Pick<SectionGeometry, 'chamber' | 'wallsIn' | 'widened'>

/**
 * A contour of the chamber that agrees with all that is known: it opens as wide as the opening, and runs through the edges
 * of the seats; between them it is a likely shape.
 */
export function chamberOf(
  input: Pick<CutSectionInput, 'casting' | 'chamberShape'>,
  opening: SectionOpening | null,
  front: readonly PlacedValve[],
  widthIn: number,
): ChamberDrawn {
  // The valves lie in the deck itself: there is no chamber to draw.
  if (input.chamberShape === 'flat-deck') return { chamber: null, wallsIn: null, widened: false }
  const mouths = inOrder(front).map(widest)
  const [first, last] = [mouths[0], mouths[mouths.length - 1]]
  if (!first || !last)
    return {
      chamber: opening && withoutSeats(input, opening),
      wallsIn: opening && [opening.fromIn, opening.toIn],
      widened: false,
    }
  const [least, most] = [first[0].xIn - besideSeatIn, last[1].xIn + besideSeatIn]
  const fromIn = Math.max(0, Math.min(opening?.fromIn ?? least, least))
  const toIn = Math.min(widthIn, Math.max(opening?.toIn ?? most, most))
  const [start, end] = [
    { xIn: fromIn, zIn: 0 },
    { xIn: toIn, zIn: 0 },
  ]
  const bend = steepness[input.chamberShape]
  const lean = leanOf(input)
  const between = mouths.flatMap(([a, b], at): ContourPiece[] => [
    ...(at === 0 ? [] : [{ to: a }]),
    { to: b, mouth: true },
  ])
  return {
    chamber: {
      start,
      pieces: [wall(start, first[0], bend, lean), ...between, reversed(last[1], wall(end, last[1], bend, lean), end)],
      sure: opening !== null && opening.source !== 'perimeter',
    },
    wallsIn: [fromIn, toIn],
    widened: opening !== null && (fromIn < opening.fromIn - sameIn || toIn > opening.toIn + sameIn),
  }
}

const leanOf = ({ casting }: Pick<CutSectionInput, 'casting'>): number =>
  Math.tan(radians(within(casting.wallDraftDeg, -20, 30) ?? 0))

/** From the deck up along the wall, over into the roof at a seat's edge. */
function wall(foot: SectionPoint, edge: SectionPoint, bend: number, lean: number): ContourPiece {
  const [across, up] = [edge.xIn - foot.xIn, edge.zIn - foot.zIn]
  const inward = Math.sign(across) * Math.min(Math.abs(across), Math.abs(lean * bend * up)) * Math.sign(lean)
  return {
    to: edge,
    by: [
      { xIn: foot.xIn + inward, zIn: foot.zIn + bend * up },
      { xIn: edge.xIn - bend * across, zIn: edge.zIn },
    ],
  }
}

const reversed = (from: SectionPoint, { by }: ContourPiece, to: SectionPoint): ContourPiece => ({
  to,
  by: by ? [by[1], by[0]] : [from, to],
})

/** No seat to run through: a box of the chamber's mean depth, which nobody may take for the roof. */
function withoutSeats({ casting }: Pick<CutSectionInput, 'casting'>, { fromIn, toIn }: SectionOpening): Contour {
  const areaIn2 = within(casting.openingAreaIn2, 0.5, 40) ?? (Math.PI * (toIn - fromIn) ** 2) / 4
  const meanIn = (within(casting.nominalCc, 1, 400) ?? 0) / ccPerIn3 / areaIn2
  const upIn = within(meanIn, 0.1, 1.2) ?? 0.4
  const roundIn = Math.min(upIn, (toIn - fromIn) / 2) * 0.6
  return {
    start: { xIn: fromIn, zIn: 0 },
    pieces: [
      { to: { xIn: fromIn, zIn: upIn - roundIn } },
      {
        by: [
          { xIn: fromIn, zIn: upIn },
          { xIn: fromIn, zIn: upIn },
        ],
        to: { xIn: fromIn + roundIn, zIn: upIn },
      },
      { to: { xIn: toIn - roundIn, zIn: upIn } },
      {
        by: [
          { xIn: toIn, zIn: upIn },
          { xIn: toIn, zIn: upIn },
        ],
        to: { xIn: toIn, zIn: upIn - roundIn },
      },
      { to: { xIn: toIn, zIn: 0 } },
    ],
    sure: false,
  }
}
