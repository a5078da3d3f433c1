import type { Corner, Edge, HeadDrawing } from '@/lib/core/spec/head-drawing'
import {
  ellipsePath, filled, hatchPath, linePath, outlined, polygonPath, roundedPath, stroked, text,
  type Drawing, type Mark, type Point,
} from './marks' // prettier-ignore

/** Where the head lies in the drawing: its deck seen from below, intake edge at the foot, marked end at the left. */
type Frame = {
  readonly left: number
  readonly top: number
  readonly length: number
  readonly width: number
}

const marginX = 14
const marginY = 8
const legendMm = 4

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
    heightMm: width + 2 * marginY + (head.bolts.length === 0 ? 0 : legendMm),
    title: 'Plan of the head',
    description: planInWords(head),
    marks: [
      ...outlined(roundedPath(frame.left, frame.top, length, width, 1.5), 'ink', 0.6),
      ...deepEdge(head, frame),
      ...markedEnd(frame),
      ...bolts(head, frame),
      ...chambers(head, frame),
      ...edges(head, frame),
      ...corners(head, frame),
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
      linePath(
        [frame.left, edgeY(head.deepEdge, frame)],
        [frame.left + frame.length, edgeY(head.deepEdge, frame)],
      ),
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

function bolts({ bolts, slotToward }: HeadDrawing, frame: Frame): Mark[] {
  const centre = (bolt: (typeof bolts)[number]): Point => [
    frame.left + bolt.along * frame.length,
    frame.top + (1 - bolt.across) * frame.width,
  ]
  const slot = slotToward === 'intake' ? 1 : -1
  const path = (wanted: readonly (typeof bolts)[number][]) =>
    wanted
      .map((bolt) => {
        const [x, y] = centre(bolt)
        return bolt.slotted
          ? roundedPath(x - 1.2, y - 1.2 + Math.min(0, slot * 1.6), 2.4, 4, 1.2)
          : ellipsePath([x, y], 1.2)
      })
      .join('')
  return [
    ...outlined(path(bolts.filter((bolt) => !bolt.long)), 'ink', 0.35),
    ...outlined(path(bolts.filter((bolt) => bolt.long)), 'ink', 0.35, 'ink'),
  ]
}

function chambers(head: HeadDrawing, frame: Frame): Mark[] {
  // Both ends stay clear: the marked end has its notch there.
  const clear = 5
  const pitch = (frame.length - 2 * clear) / Math.max(1, head.chambers)
  const rx = Math.min(pitch * 0.42, frame.width * 0.34)
  const ry = frame.width * 0.29
  const longest = Math.max(4, ...head.chamberReadings.map((reading) => reading?.length ?? 0))
  const readingMm = Math.min(4.2, (1.8 * rx) / (0.45 * longest))
  const centres = Array.from({ length: head.chambers }, (_, i): Point => [
    frame.left + clear + pitch * (i + 0.5),
    frame.top + frame.width / 2,
  ])
  const outline = centres
    .map(([x, y]) => roundedPath(x - rx, y - ry, 2 * rx, 2 * ry, rx * 0.75, ry * 0.75))
    .join('')
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

/** What the bolt holes mean. */
function legend({ bolts, slotToward }: HeadDrawing, frame: Frame): Mark[] {
  if (bolts.length === 0) return []
  const slots = slotToward === null ? '' : `; slots open toward the ${slotToward} edge`
  return text(
    [frame.left + frame.length / 2, frame.top + frame.width + 9.6],
    `bolt holes: solid long, open short${slots}`,
    3,
    { anchor: 'middle' },
  )
}

function edges(head: HeadDrawing, frame: Frame): Mark[] {
  const middle = frame.left + frame.length / 2
  return (['intake', 'exhaust'] as const).flatMap((edge) => {
    const y = edge === 'intake' ? edgeY(edge, frame) + 5.4 : edgeY(edge, frame) - 2.6
    const depth = head.edgeDepths[edge]
    const deep = head.deepEdge === edge
    const words = [`${edge} edge`, deep ? 'deep edge' : '', depth === null ? '' : `cut ${depth}`]
    return text([middle, y], words.filter((word) => word !== '').join(' · '), deep ? 4.6 : 4, {
      anchor: 'middle',
      bold: deep,
    })
  })
}

function corners(head: HeadDrawing, frame: Frame): Mark[] {
  const right = frame.left + frame.length
  const places: readonly (readonly [Corner, Point, 'start' | 'end'])[] = [
    ['exhaust-1', [frame.left + 1, frame.top - 2.6], 'start'],
    ['exhaust-2', [right - 1, frame.top - 2.6], 'end'],
    ['intake-1', [frame.left + 1, frame.top + frame.width + 5.4], 'start'],
    ['intake-2', [right - 1, frame.top + frame.width + 5.4], 'end'],
  ]
  return places.flatMap(([corner, point, anchor]) =>
    text(point, head.cornerReadings[corner] ?? '', 3.8, { anchor }),
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

function planInWords(head: HeadDrawing): string {
  const readings = head.chamberReadings.flatMap((reading, i) =>
    reading === null ? [] : [`chamber ${i + 1} ${reading}`],
  )
  const corner = Object.entries(head.cornerReadings).flatMap(([name, reading]) =>
    reading === null ? [] : [`${name.replace('-', ' end ')} ${reading}`],
  )
  const slots = head.slotToward === null ? [] : [`slotted holes open toward the ${head.slotToward} edge`]
  const list = [`${head.chambers} chambers counted from the marked end`, ...readings, ...corner, ...slots]
  return `${cutInWords(head)} ${list.join('; ')}.`
}
