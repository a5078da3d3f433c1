import { formatThou } from '@/lib/core/units/format-figure'
import { metalOf, newDeckAt } from './cut-section-body'
import type { Frame } from './cut-section-frame'
import { hatchInside } from './cut-section-hatch'
import { isCut, mustHold, nearestOf, seatWords, tellingCircle } from './cut-section-words'
import type { SectionGeometry } from './cut-section-types'
import {
  ellipsePath,
  filled,
  linePath,
  outlined,
  polygonPath,
  stroked,
  text,
  type Mark,
  type Point,
  type Tone,
} from './marks'

const factors = [1, 2, 3, 4, 5, 10, 20, 40, 100, 200]
const deepestMm = 12

/** The round number of times that depths are drawn larger, for the deepest to be no more than about 12 mm. */
export function depthFactor({ depthsIn }: SectionGeometry, mmPerIn: number): number {
  const deepMm = Math.max(depthsIn.shallow, depthsIn.deep) * mmPerIn
  if (deepMm <= 0) return 10
  return factors.findLast((factor) => factor * deepMm <= deepestMm) ?? 1
}

/** A place under the strip that is worth a line of words. */
type Keyed = {
  readonly xIn: number
  /** Null: no height to be drawn at. */
  readonly zIn: number | null
  readonly words: string
  readonly tone: Tone
  readonly bold: boolean
}

const keyMm = 2.1

/** From the foot of the strip to the middle of the numbers, and to the first line of words. */
const numbersMm = keyMm + 2.4
export const firstKeyMm = numbersMm + keyMm + 4.4

/** How many rows the words under the strip take; the same for every cut of a casting. */
export const keyRows = (geometry: SectionGeometry): number =>
  geometry.valves.length + (geometry.centreIn === null ? 0 : 1)

function keyedOf(geometry: SectionGeometry): Keyed[] {
  const { valves, centreIn, motion } = geometry
  const nearest = nearestOf(geometry)
  const seats = valves.map((valve): Keyed => {
    const { nearest: point, lost } = tellingCircle(valve)
    const first = valves.length > 1 && valve === nearest && !lost
    return {
      ...point,
      words: `${first ? 'nearest: ' : ''}${seatWords(valve)}`,
      tone: mustHold(valve) ? 'stop' : 'ink',
      bold: first || lost,
    }
  })
  if (centreIn === null) return seats
  const depth = newDeckAt(geometry, centreIn).zIn
  const words = isCut(motion) ? `chamber centre, cut ${formatThou(depth)} deep` : 'chamber centre'
  return [...seats, { xIn: centreIn, zIn: null, words, tone: 'ink', bold: false }]
}

/** The deck once more over the same places, with the depths drawn larger: what true scale hides. */
export function stripMarks(geometry: SectionGeometry, frame: Frame, topY: number): Mark[] {
  const { look, leftX, rightX, mmPerIn, place } = frame
  const baseY = topY + look.stripMm
  const factor = depthFactor(geometry, mmPerIn)
  const xOf = (xIn: number) => place({ xIn, zIn: 0 })[0]
  const high = (xIn: number, zIn: number): Point => [xOf(xIn), baseY - zIn * mmPerIn * factor]
  const deckAt = (xIn: number) => high(xIn, newDeckAt(geometry, xIn).zIn)
  const metal = metalOf(geometry)
  const cut = isCut(geometry.motion)
  const above = metal.map(([from, to]) =>
    hatchInside([[xOf(from), topY], [xOf(to), topY], deckAt(to), deckAt(from)], look.hatchMm),
  )
  const taken = metal.map(([from, to]) =>
    hatchInside([high(from, 0), high(to, 0), deckAt(to), deckAt(from)], look.hatchMm / 2, true),
  )
  const walls = metal.flatMap(([from, to]) => [from, to].map((x) => linePath([xOf(x), topY], high(x, 0))))
  const [first, last] = [deckAt(0), deckAt(geometry.widthIn)]
  const solid = metal.map(([from, to]) => linePath(deckAt(from), deckAt(to))).join('')
  return [
    ...stroked(above.join(''), 'faint', 0.13),
    ...stroked(cut ? taken.join('') : '', 'ink', 0.28),
    ...stroked(walls.join(''), 'ink', 0.3),
    ...stroked(cut ? linePath([leftX, baseY], [rightX, baseY]) : '', 'ink', 0.25, [1.6, 1]),
    ...stroked(linePath(first, last), 'ink', 0.25),
    ...stroked(solid, 'ink', look.lineMm + 0.2),
    ...keys(keyedOf(geometry), frame, { topY, baseY, high }),
  ]
}

type Strip = {
  readonly topY: number
  readonly baseY: number
  readonly high: (xIn: number, zIn: number) => Point
}

/** A line down from each place to a number, and under them what stands at each. */
function keys(list: readonly Keyed[], { look, place }: Frame, { topY, baseY, high }: Strip): Mark[] {
  const keyY = baseY + numbersMm
  const numbers = apart(
    list.map(({ xIn }) => place({ xIn, zIn: 0 })[0]),
    2 * keyMm + 0.6,
    look.widthMm - keyMm - 0.5,
  )
  return list.flatMap(({ xIn, zIn, words, tone, bold }, at) => {
    const x = numbers[at] ?? 0
    const [placeX, pointY] = high(xIn, zIn ?? 0)
    const seen = zIn !== null && pointY >= topY + 1 && pointY <= baseY
    const fromY = zIn === null || !seen ? topY : pointY
    const number = String(at + 1)
    const rowY = baseY + firstKeyMm + look.rowMm * at
    const balloon = (point: Point): Mark[] => [
      ...outlined(ellipsePath(point, keyMm), 'ink', 0.25),
      ...text([point[0], point[1] + look.smallMm * 0.34], number, look.smallMm, { anchor: 'middle', bold }),
    ]
    return [
      ...stroked(linePath([placeX, fromY], [placeX, baseY]), tone, 0.25, zIn === null ? [3, 0.8] : undefined),
      ...stroked(linePath([placeX, baseY], [x, keyY - keyMm]), 'ink', 0.2),
      ...(seen ? outlined(ellipsePath([placeX, pointY], 0.9), tone, 0.4) : []),
      ...(zIn !== null && pointY < topY + 1 ? upward(placeX, topY, tone) : []),
      ...balloon([x, keyY]),
      ...text([3, rowY], number, look.smallMm, { anchor: 'middle', bold }),
      ...text([6, rowY], words, look.smallMm, { bold, tone }),
    ]
  })
}

/** Higher than the strip shows. */
const upward = (x: number, topY: number, tone: Tone): Mark[] =>
  filled(
    polygonPath([
      [x, topY - 1.2],
      [x - 0.7, topY + 1.2],
      [x + 0.7, topY + 1.2],
    ]),
    tone,
  )

/** The same places in the same order, moved so that they stand beside one another and none beyond the last. */
export function apart(places: readonly number[], least: number, last: number): number[] {
  const order = places.map((_, at) => at).sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0))
  const moved = [...places]
  let free = -Infinity
  for (const at of order) {
    moved[at] = Math.max(moved[at] ?? 0, free)
    free = (moved[at] ?? 0) + least
  }
  free = last
  for (const at of order.reverse()) {
    moved[at] = Math.min(moved[at] ?? 0, free)
    free = (moved[at] ?? 0) - least
  }
  return moved
}
