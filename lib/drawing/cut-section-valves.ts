import type { SectionPoint } from '@/lib/core/clearance/rigid-motion'
import type { Frame } from './cut-section-frame'
import { inSection } from './cut-section-seats'
import { mustHold, tellingCircle } from './cut-section-words'
import type { PlacedValve, SeatMark, SectionGeometry } from './cut-section-types'
import { roughWidth } from './dimension'
import { at, ellipsePath, filled, linePath, stroked, text, type Mark, type Point } from './marks'

/** A place along a valve's axis from its centre, the way it opens, and across it toward the deep edge. */
type Local = (alongIn: number, acrossIn: number) => SectionPoint

function localOf({ axis }: PlacedValve, centre: SectionPoint): Local {
  const { open, across } = inSection(axis)
  return (alongIn, acrossIn) => ({
    xIn: centre.xIn + alongIn * open.xIn + acrossIn * across.xIn,
    zIn: centre.zIn + alongIn * open.zIn + acrossIn * across.zIn,
  })
}

/** How far one may go from a point into the head along a valve's axis: to the break, or to a side. */
function reachIn({ axis }: PlacedValve, from: SectionPoint, { topIn, widthIn }: SectionGeometry): number {
  const { open } = inSection(axis)
  const up = (topIn - from.zIn) / -open.zIn
  const side = open.xIn > 0 ? from.xIn : widthIn - from.xIn
  const sideways = Math.abs(open.xIn) < 1e-9 ? Infinity : side / Math.abs(open.xIn)
  return Math.max(0, Math.min(up, sideways))
}

/** Of the sealing circle's radius; and how far behind the seat the port is that wide. */
const throatShare = 0.82
const throatIn = 0.34
const seatFaceIn = 0.07

/** One wall of a port from the sealing line inward: down the seat's face, round into the throat, and on as far as it goes. */
type PortWall = readonly [seat: Point, face: Point, c1: Point, c2: Point, throat: Point, far: Point]

const inward = ([seat, face, c1, c2, throat, far]: PortWall): string =>
  `${at(seat)}L${at(face)}C${at(c1)} ${at(c2)} ${at(throat)}L${at(far)}`

const outward = ([seat, face, c1, c2, throat, far]: PortWall): string =>
  `${at(far)}L${at(throat)}C${at(c2)} ${at(c1)} ${at(face)}L${at(seat)}`

/** The port behind a valve that stands in front, as far as it is straight: a sketch, cleared of hatching. */
export function portMarks(valve: PlacedValve, geometry: SectionGeometry, frame: Frame): Mark[] {
  const [outer, inner] = [valve.circles[0], valve.circles[valve.circles.length - 1]]
  if (!outer || !inner) return []
  const [a, b] = inner.ends
  const local = localOf(valve, { xIn: (a.xIn + b.xIn) / 2, zIn: (a.zIn + b.zIn) / 2 })
  const radius = Math.hypot(b.xIn - a.xIn, b.zIn - a.zIn) / 2
  const wall = (sign: 1 | -1): PortWall => {
    const [face, throat] = [sign * (radius - seatFaceIn), sign * throatShare * radius]
    const far = Math.max(throatIn, reachIn(valve, local(0, throat), geometry))
    const point = (along: number, across: number) => frame.place(local(-along, across))
    return [
      point(0, sign * radius),
      point(seatFaceIn, face),
      point(seatFaceIn + 0.06, face - sign * 0.06),
      point(throatIn - 0.1, throat),
      point(throatIn, throat),
      point(far, throat),
    ]
  }
  const [shallow, deep] = [wall(-1), wall(1)]
  const mouth = outer.ends.map(frame.place) as [Point, Point]
  return [
    ...filled(`M${at(mouth[0])}L${inward(shallow)}L${outward(deep)}L${at(mouth[1])}Z`, 'ground'),
    ...stroked(`${seatContour(valve, frame)}M${inward(shallow)}M${inward(deep)}`, 'ink', 0.3),
  ]
}

/** From the insert's edge over the top cut to the sealing line, on both sides. */
function seatContour({ circles }: PlacedValve, { place }: Frame): string {
  if (circles.length < 2) return ''
  return ([0, 1] as const).map((side) => `M${circles.map(({ ends }) => at(place(ends[side]))).join('L')}`).join('')
}

/** Thickness of a valve's edge, depth of its face, and the least clear of the break line. */
const marginIn = 0.05
const faceIn = 0.09
const clearIn = 0.12

const stemOf = (radiusIn: number): number => Math.max(0.11, 0.165 * radiusIn)

const stemLengthIn = (valve: PlacedValve, geometry: SectionGeometry): number =>
  Math.max(0.2, reachIn(valve, valve.centre, geometry) - clearIn)

/** Head and a piece of stem, shut: the intake valve solid, the exhaust valve a thin outline, broken where it is behind. */
export function valveMarks(valve: PlacedValve, geometry: SectionGeometry, frame: Frame): Mark[] {
  if (valve.radiusIn === null) return []
  const local = localOf(valve, valve.centre)
  const far = stemLengthIn(valve, geometry)
  const head = valvePath(valve.radiusIn, far, (along, across) => at(frame.place(local(along, across))))
  const centreLine = linePath(frame.place(local(0.2, 0)), frame.place(local(-far - 0.06, 0)))
  const outline: Mark[] =
    valve.port === 'intake'
      ? [{ kind: 'path', d: head, fill: 'faint', stroke: { tone: 'ink', widthMm: 0.35 } }]
      : stroked(head, 'ink', 0.28, geometry.oneBehindOther ? [1.5, 0.8] : undefined)
  return [...outline, ...stroked(centreLine, 'ink', 0.15, [3, 1])]
}

/** From the edge of the face round the back, up the stem to a broken end, and down the other side. */
function valvePath(r: number, far: number, point: (along: number, across: number) => string): string {
  const stem = stemOf(r)
  const neck = Math.min(0.62 * r + faceIn, far)
  const handles = (sign: 1 | -1) =>
    [point(-faceIn - 0.06 * r, sign * 0.55 * r), point(-0.5 * neck, sign * stem)] as const
  const [toNeck, fromNeck] = [handles(1), handles(-1)]
  return [
    `M${point(marginIn, -r)}L${point(marginIn, r)}L${point(0, r)}L${point(-faceIn, r - faceIn)}`,
    `C${toNeck[0]} ${toNeck[1]} ${point(-neck, stem)}L${point(-far, stem)}`,
    `C${point(-far - 0.07, stem / 2)} ${point(-far + 0.07, -stem / 2)} ${point(-far, -stem)}`,
    `L${point(-neck, -stem)}C${fromNeck[1]} ${fromNeck[0]} ${point(-faceIn, faceIn - r)}L${point(0, -r)}Z`,
  ].join('')
}

/** Half the length of a mark in inches, and its weight as a share of the drawing's line. */
const ticks: Readonly<Record<SeatMark['name'], readonly [halfIn: number, weight: number]>> = {
  insert: [0.045, 0.45],
  'top-cut': [0.045, 0.45],
  sealing: [0.055, 1],
  'valve-rim': [0.045, 0.6],
}

/** Every known circle as a short mark where the section meets it, leaning as the valve does; what is cut is ringed. */
export function seatMarks(valve: PlacedValve, frame: Frame): Mark[] {
  const { open } = inSection(valve.axis)
  const { nearest, lost } = tellingCircle(valve)
  const tick = ({ xIn, zIn }: SectionPoint, half: number) =>
    linePath(
      frame.place({ xIn: xIn - half * open.xIn, zIn: zIn - half * open.zIn }),
      frame.place({ xIn: xIn + half * open.xIn, zIn: zIn + half * open.zIn }),
    )
  const ring = lost ? ellipsePath(frame.place(nearest), 2.2) : ''
  return [
    ...valve.circles.flatMap(({ name, ends }) => {
      const [half, weight] = ticks[name]
      return stroked(ends.map((end) => tick(end, half)).join(''), 'ink', weight * frame.look.lineMm)
    }),
    ...stroked(ring, mustHold(valve) ? 'stop' : 'ink', 0.6),
  ]
}

/** Names over the section, each led to the outer side of its stem, kept apart. */
export function valveNames(geometry: SectionGeometry, frame: Frame): Mark[] {
  const { look } = frame
  const y = look.textMm + 0.6
  const ends = geometry.valves.flatMap((valve) => {
    if (valve.radiusIn === null) return []
    const local = localOf(valve, valve.centre)
    const along = 0.06 - stemLengthIn(valve, geometry)
    const across = 0.6 * stemOf(valve.radiusIn)
    const sides = [local(along, -across), local(along, across)].map(frame.place).sort((a, b) => a[0] - b[0])
    return [{ words: `${valve.port} valve`, sides: sides as [Point, Point] }]
  })
  return ends
    .sort((a, b) => a.sides[0][0] - b.sides[0][0])
    .flatMap(({ words, sides }, rank) => {
      const toLeft = ends.length > 1 ? rank === 0 : sides[0][0] > look.widthMm / 2
      const tip = toLeft ? sides[0] : sides[1]
      const width = roughWidth(words, look.textMm)
      const wanted = toLeft ? tip[0] - 5 - width : tip[0] + 5
      const x = Math.min(Math.max(wanted, 0.5), look.widthMm - width - 0.5)
      const from: Point = [toLeft ? x + width - 1 : x + 1, y + 1]
      return [
        ...text([toLeft ? x + width : x, y], words, look.textMm, { anchor: toLeft ? 'end' : 'start' }),
        ...stroked(linePath(from, tip), 'ink', 0.2),
        ...filled(ellipsePath(tip, 0.5), 'ink'),
      ]
    })
}
