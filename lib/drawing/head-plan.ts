import type { Corner, Edge, HeadDrawing } from '@/lib/core/spec/head-drawing'
import { roughWidth } from './dimension'
import { cylinderPitch, flatDeckValves, flatDeckWords, type DeckFrame } from './head-plan-valves'
import {
  ellipsePath,
  filled,
  hatchPath,
  linePath,
  outlined,
  polygonPath,
  rectPath,
  roundedPath,
  stroked,
  text,
  type Drawing,
  type Mark,
  type Point,
} from './marks'

/** Where the head lies in the drawing: its deck seen from below. */
type Frame = DeckFrame

const marginX = 14
const marginY = 8
/** Width of a letter of the condensed face, as a share of its size. */
const letterMm = 0.44

/**
 * Plan of the deck of a head: marked end, chambers counted from it, both edges named, the deep edge of an angle cut
 * hatched and named in words, readings where they were taken.
 */
export function headPlan(head: HeadDrawing, widthMm = 150): Drawing {
  const length = widthMm - 2 * marginX
  const width = Math.min(52, Math.max(30, length / 2.6))
  const frame: Frame = { left: marginX, top: marginY, length, width }
  return {
    widthMm,
    heightMm: width + 2 * marginY + legendLines(head).length * legendLineMm,
    title: 'Plan of the head',
    description: planInWords(head),
    marks: [
      ...outlined(roundedPath(frame.left, frame.top, length, width, 1.5), 'ink', 0.6),
      ...deepEdge(head, frame),
      ...markedEnd(frame),
      ...bolts(head, frame),
      ...(head.flatDeck ? flatDeckValves(head, head.flatDeck, frame) : chambers(head, frame)),
      ...edges(head, frame),
      ...corners(head, frame),
      ...touchedPoints(head, frame),
      ...legend(head, frame),
    ],
  }
}

const edgeY = (edge: Edge, frame: Frame): number => (edge === 'intake' ? frame.top + frame.width : frame.top)

function deepEdge(head: HeadDrawing, frame: Frame): Mark[] {
  if (head.deepEdge === null) return []
  const band = frame.width * 0.17
  const y = head.deepEdge === 'intake' ? frame.top + frame.width - band : frame.top
  return [
    ...stroked(hatchPath(frame.left, y, frame.length, band, 1.5), 'ink', 0.3),
    ...stroked(
      linePath([frame.left, edgeY(head.deepEdge, frame)], [frame.left + frame.length, edgeY(head.deepEdge, frame)]),
      'ink',
      1.4,
    ),
  ]
}

/** A filed notch in the end of the head, and its name. */
function markedEnd(frame: Frame): Mark[] {
  const y = frame.top + frame.width / 2
  return [
    ...filled(
      polygonPath([
        [frame.left - 0.3, y - 3],
        [frame.left + 3.4, y],
        [frame.left - 0.3, y + 3],
      ]),
      'ink',
    ),
    ...text([frame.left - 2.2, y], 'marked end', 3.4, { anchor: 'middle', turnDeg: -90, bold: true }),
  ]
}

type Bolt = HeadDrawing['bolts'][number]
const holeMm = 1.2
/** A slot is drawn far longer than it is, or nobody would see it. */
const slotMm = 1.6

const holeAt = ({ along, across }: Bolt, frame: Frame): Point => [
  frame.left + along * frame.length,
  frame.top + (1 - across) * frame.width,
]

/** Holes by length, a slot as a long hole with an arrow on the side it is opened to, each with its name. */
function bolts({ bolts: all, slotToward }: HeadDrawing, frame: Frame): Mark[] {
  const toward = slotToward === 'intake' ? 1 : -1
  const hole = (bolt: Bolt): string => {
    const [x, y] = holeAt(bolt, frame)
    const top = y - holeMm + Math.min(0, toward * slotMm)
    return bolt.slotted
      ? roundedPath(x - holeMm, top, 2 * holeMm, 2 * holeMm + slotMm, holeMm)
      : ellipsePath([x, y], holeMm)
  }
  const arrow = (bolt: Bolt): string => {
    const [x, y] = holeAt(bolt, frame)
    const end = y + toward * (holeMm + slotMm + 0.3)
    return polygonPath([
      [x - 0.9, end],
      [x + 0.9, end],
      [x, end + toward * 1.5],
    ])
  }
  const path = (wanted: readonly Bolt[], draw: (bolt: Bolt) => string) => wanted.map(draw).join('')
  const slotted = slotToward === null ? [] : all.filter((bolt) => bolt.slotted)
  return [
    ...outlined(
      path(
        all.filter((bolt) => !bolt.long),
        hole,
      ),
      'ink',
      0.35,
    ),
    ...outlined(
      path(
        all.filter((bolt) => bolt.long),
        hole,
      ),
      'ink',
      0.35,
      'ink',
    ),
    ...outlined(path(slotted, arrow), 'ground', 0.5, 'ink'),
    ...all.flatMap((bolt) => boltName(bolt, frame)),
  ]
}

const nameMm = 2.5

/** Beside the hole, on the side that is farther from the end of the head. */
function boltName(bolt: Bolt, frame: Frame): Mark[] {
  if (!bolt.label) return []
  const [x, y] = holeAt(bolt, frame)
  const side = bolt.along > 0.5 ? -1 : 1
  const widthMm = roughWidth(bolt.label, nameMm) + 0.4
  const from = x + side * (holeMm + 0.6) - (side < 0 ? widthMm : 0)
  return [
    ...filled(rectPath(from, y - nameMm * 0.45, widthMm, nameMm * 0.9), 'ground'),
    ...text([from + widthMm / 2, y + nameMm * 0.35], bolt.label, nameMm, { anchor: 'middle' }),
  ]
}

function chambers(head: HeadDrawing, frame: Frame): Mark[] {
  const { pitch, at } = cylinderPitch(head.chambers, frame)
  const rx = Math.min(pitch * 0.42, frame.width * 0.34)
  const ry = frame.width * 0.29
  const longest = Math.max(4, ...head.chamberReadings.map((reading) => reading?.length ?? 0))
  const readingMm = Math.min(4.2, (1.8 * rx) / (0.45 * longest))
  const centres = Array.from({ length: head.chambers }, (_, i): Point => [at(i), frame.top + frame.width / 2])
  const outline = centres.map(([x, y]) => roundedPath(x - rx, y - ry, 2 * rx, 2 * ry, rx * 0.75, ry * 0.75)).join('')
  return [
    ...outlined(outline, 'ink', 0.4),
    ...centres.flatMap(([x, y], i) => [
      ...text([x, y - ry * 0.02], String(i + 1), Math.min(7, rx * 0.9), { anchor: 'middle', bold: true }),
      ...text([x, y + ry * 0.6], head.chamberReadings[i] ?? '', readingMm, {
        anchor: 'middle',
      }),
    ]),
  ]
}

const legendTextMm = 3
const legendLineMm = 3.8

/** What the valves of a flat deck and the bolt holes mean, a line for their lengths and one for their slots; then where the corners are touched. */
function legendLines(head: HeadDrawing): string[] {
  return [flatDeckWords(head), ...boltLines(head), head.touched ? `${crossSign}: ${head.touched.words}` : ''].filter(
    (line) => line !== '',
  )
}

const crossSign = '+'

function boltLines(head: HeadDrawing): string[] {
  if (head.bolts.length === 0) return []
  const lengths = head.bolts.some(({ long }) => long) ? ': solid long, open short' : ''
  return [`bolt holes${lengths}`, slotWords(head)]
}

function legend(head: HeadDrawing, frame: Frame): Mark[] {
  const room = frame.length + 2 * marginX - 2
  return legendLines(head).flatMap((words, i) =>
    text(
      [frame.left + frame.length / 2, frame.top + frame.width + 9.6 + i * legendLineMm],
      words,
      Math.min(legendTextMm, room / (letterMm * words.length)),
      { anchor: 'middle' },
    ),
  )
}

/** Which way slots open, whether they are cut or needed, and what was written of them. */
export function slotWords({ slotToward, slotsAre, slotNote }: HeadDrawing): string {
  const note = slotNote ? `slotted as noted: ${shortNote(slotNote)}` : ''
  if (slotToward === null) return note
  const slots = slotsAre === 'needed' ? 'slots are needed toward' : 'slots open toward'
  return [`${slots} the ${slotToward} edge`, note].filter((part) => part !== '').join('; ')
}

const mostNote = 48
const shortNote = (note: string): string =>
  note.length <= mostNote ? note : `${note.slice(0, mostNote - 1).trimEnd()}…`

/** Named at the middle of each edge, between the readings of its corners. */
function edges(head: HeadDrawing, frame: Frame): Mark[] {
  const middle = frame.left + frame.length / 2
  return (['intake', 'exhaust'] as const).flatMap((edge) => {
    const y = edge === 'intake' ? edgeY(edge, frame) + 5.4 : edgeY(edge, frame) - 2.6
    const depth = head.edgeDepths[edge]
    const deep = head.deepEdge === edge
    const cut = head.cutKind === 'clean-up' ? 'at most' : 'cut'
    const words = [`${edge} edge`, deep ? 'deep edge' : '', depth === null ? '' : `${cut} ${depth}`]
      .filter((word) => word !== '')
      .join(' · ')
    const corner = Math.max(...([1, 2] as const).map((end) => head.cornerReadings[`${edge}-${end}`]?.length ?? 0))
    const room = frame.length - 2 * (corner * cornerMm * letterMm + 2.5)
    const sizeMm = Math.min(deep ? 4.6 : 4, room / (letterMm * words.length))
    return text([middle, y], words, sizeMm, { anchor: 'middle', bold: deep })
  })
}

const cornerMm = 3.8

function corners(head: HeadDrawing, frame: Frame): Mark[] {
  const right = frame.left + frame.length
  const places: readonly (readonly [Corner, Point, 'start' | 'end'])[] = [
    ['exhaust-1', [frame.left + 1, frame.top - 2.6], 'start'],
    ['exhaust-2', [right - 1, frame.top - 2.6], 'end'],
    ['intake-1', [frame.left + 1, frame.top + frame.width + 5.4], 'start'],
    ['intake-2', [right - 1, frame.top + frame.width + 5.4], 'end'],
  ]
  return places.flatMap(([corner, point, anchor]) =>
    text(point, head.cornerReadings[corner] ?? '', cornerMm, { anchor }),
  )
}

const crossMm = 1.3

/** Where the gauge stands: a cross at each of the four points. */
function touchedPoints({ touched }: HeadDrawing, frame: Frame): Mark[] {
  if (!touched) return []
  const across = touched.acrossShare * frame.width
  const along = touched.alongShare * frame.length
  return [frame.left + along, frame.left + frame.length - along].flatMap((x) =>
    [frame.top + across, frame.top + frame.width - across].flatMap((y) => [
      ...stroked(linePath([x - crossMm, y], [x + crossMm, y]), 'ink', 0.3),
      ...stroked(linePath([x, y - crossMm], [x, y + crossMm]), 'ink', 0.3),
    ]),
  )
}

/** The cut in words, as it stands under the drawing and is read to those who do not see it. */
export function cutInWords(head: HeadDrawing): string {
  const { intake, exhaust } = head.edgeDepths
  const depths = [intake && `${intake} at the intake edge`, exhaust && `${exhaust} at the exhaust edge`]
  const cut = depths.filter((depth) => depth !== null && depth !== '').join(', ')
  switch (head.cutKind) {
    case 'none':
      return 'No cut.'
    case 'clean-up':
      return `Clean-up cut${cut === '' ? '' : `: no more than ${cut}`}.`
    case 'flat':
      return `Flat cut${cut === '' ? '' : `: ${cut}`}.`
    default:
      return `${head.cutKind === 'angle' ? 'Angle cut' : 'Angle and flat cut'}: deep at the ${head.deepEdge ?? 'unnamed'} edge${cut === '' ? '' : `; ${cut}`}.`
  }
}

function boltsInWords({ bolts: all }: HeadDrawing): string {
  const named = (wanted: readonly Bolt[]) => wanted.flatMap(({ label }) => (label ? [label] : [])).join(', ')
  const long = named(all.filter((bolt) => bolt.long))
  const slotted = named(all.filter((bolt) => bolt.slotted))
  return [long === '' ? '' : `long bolts in ${long}`, slotted === '' ? '' : `slots at ${slotted}`]
    .filter((part) => part !== '')
    .join('; ')
}

function planInWords(head: HeadDrawing): string {
  const readings = head.chamberReadings.flatMap((reading, i) =>
    reading === null ? [] : [`chamber ${i + 1} ${reading}`],
  )
  const corner = Object.entries(head.cornerReadings).flatMap(([name, reading]) =>
    reading === null ? [] : [`${name.replace('-', ' end ')} ${reading}`],
  )
  const slots = [boltsInWords(head), slotWords(head)].filter((part) => part !== '')
  const touched = head.touched ? [head.touched.words] : []
  const what = head.flatDeck ? 'cylinders, valves in a flat deck,' : 'chambers'
  const list = [`${head.chambers} ${what} counted from the marked end`, ...readings, ...corner, ...touched, ...slots]
  return `${cutInWords(head)} ${list.join('; ')}.`
}
