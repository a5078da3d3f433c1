import type { Graduation } from './graduations'
import { filled, linePath, outlined, polygonPath, rectPath, stroked, text, type Drawing, type Mark } from './marks'
import { radians } from '@/lib/core/units/degrees'

export type HeadScaleSetting = {
  readonly widthMm: number
  /** Step names written along the graduations, step numbers and boxes to tick by hand: for paper. */
  readonly forHand: boolean
}

type Placed = {
  readonly graduation: Graduation
  readonly number: number
  readonly x: number
  readonly lengthMm: number
  /** Up from the edge in house, down from it outside. */
  readonly direction: -1 | 1
}

const longMm = 8
const shortMm = 4.5
const bodyMm = 11
const hangMm = 10
/** Names of steps lean over a scale to be ticked by hand; boxes stand under it. */
const nameMm = 2.9
const nameTurnDeg = -68
const boxesMm = 10
const barMm = 1.3

/**
 * A route as the edge of a steel scale lying flat: one graduation a step, from left to right.
 *
 * Long where a reading is owed. Cut solid when done, half cut when started, hollow while to do, with a pointer at its tip
 * when ready. Outside steps hang below the edge. "Do again" is struck through; waived is hollow with a W; "not needed" is
 * a faint tick. A hold is a clamp across the scale.
 */
export function headScale(graduations: readonly Graduation[], setting: HeadScaleSetting): Drawing {
  const { widthMm, forHand } = setting
  const names = forHand ? namesRoom(graduations) : { above: 1, beside: 0 }
  const edgeMm = names.above + bodyMm
  const heightMm = edgeMm + hangMm + (forHand ? boxesMm : 1)
  const placed = place(graduations, widthMm - names.beside)
  return {
    widthMm,
    heightMm,
    title: `Route, ${graduations.length} steps`,
    description: inWords(graduations),
    marks: [
      ...outlined(rectPath(0.3, edgeMm - bodyMm, widthMm - 0.6, bodyMm), 'faint', 0.25),
      ...bars(placed, edgeMm),
      ...stroked(linePath([0, edgeMm], [widthMm, edgeMm]), 'ink', 0.7),
      ...pointers(placed, edgeMm),
      ...strikes(placed, edgeMm),
      ...letters(placed, edgeMm),
      ...clamps(placed, edgeMm),
      ...(forHand ? handMarks(placed, edgeMm) : []),
    ],
  }
}

/** Room that the longest leaning name takes above the scale and beyond its right end. */
function namesRoom(graduations: readonly Graduation[]): { readonly above: number; readonly beside: number } {
  const wordMm = (label: string) => label.length * nameMm * 0.41
  const lean = radians(nameTurnDeg)
  const longest = Math.max(4, ...graduations.map(({ label }) => wordMm(label)))
  const last = wordMm(graduations[graduations.length - 1]?.label ?? '')
  return { above: longest * Math.sin(-lean) + 3, beside: Math.max(0, last * Math.cos(lean) - 1) }
}

function place(graduations: readonly Graduation[], widthMm: number): Placed[] {
  const pitchMm = widthMm / Math.max(1, graduations.length)
  return graduations.map((graduation, i) => ({
    graduation,
    number: i + 1,
    x: (i + 0.5) * pitchMm,
    lengthMm: graduation.owesReading ? longMm : shortMm,
    direction: graduation.outside ? 1 : -1,
  }))
}

/** Rectangle along a graduation, from one share of its length to another. */
function bar({ x, lengthMm, direction }: Placed, edgeMm: number, from: number, to: number): string {
  const [a, b] = [edgeMm + direction * lengthMm * from, edgeMm + direction * lengthMm * to]
  return rectPath(x - barMm / 2, Math.min(a, b), barMm, Math.abs(b - a))
}

const join = (placed: readonly Placed[], states: readonly Graduation['state'][], draw: (p: Placed) => string) =>
  placed
    .filter((p) => states.includes(p.graduation.state))
    .map(draw)
    .join('')

/** One path for each way of cutting, however many steps: a queue shows thirty of these at once. */
function bars(placed: readonly Placed[], edgeMm: number): Mark[] {
  return [
    ...outlined(
      join(placed, ['to do', 'ready', 'started', 'waived'], (p) => bar(p, edgeMm, 0, 1)),
      'ink',
      0.25,
    ),
    ...filled(
      join(placed, ['done', 'do again'], (p) => bar(p, edgeMm, 0, 1)) +
        join(placed, ['started'], (p) => bar(p, edgeMm, 0, 0.5)),
      'ink',
    ),
    ...stroked(
      join(placed, ['not needed'], ({ x, direction }) =>
        linePath([x, edgeMm], [x, edgeMm + direction * shortMm * 0.6]),
      ),
      'faint',
      0.25,
    ),
  ]
}

function pointers(placed: readonly Placed[], edgeMm: number): Mark[] {
  const pointer = ({ x, lengthMm, direction }: Placed) => {
    const tip = edgeMm + direction * (lengthMm + 0.5)
    return polygonPath([
      [x, tip],
      [x - 1.1, tip + direction * 1.9],
      [x + 1.1, tip + direction * 1.9],
    ])
  }
  return filled(join(placed, ['ready'], pointer), 'ink')
}

function strikes(placed: readonly Placed[], edgeMm: number): Mark[] {
  const strike = ({ x, lengthMm, direction }: Placed) => {
    const middle = edgeMm + (direction * lengthMm) / 2
    return linePath([x - 2, middle + 1.8], [x + 2, middle - 1.8])
  }
  const all = join(placed, ['do again'], strike)
  return [...stroked(all, 'ground', 1.1), ...stroked(all, 'ink', 0.45)]
}

function letters(placed: readonly Placed[], edgeMm: number): Mark[] {
  return placed
    .filter(({ graduation }) => graduation.state === 'waived')
    .flatMap(({ x, lengthMm, direction }) =>
      text([x, edgeMm + direction * (lengthMm + 0.7) + (direction === 1 ? 1.8 : 0)], 'W', 2.5, {
        anchor: 'middle',
        bold: true,
      }),
    )
}

/** A screw clamp seen from the end of the scale: frame round the far side, screw and pad under the edge. */
function clamps(placed: readonly Placed[], edgeMm: number): Mark[] {
  const held = placed.filter(({ graduation }) => graduation.held)
  const [top, bottom] = [edgeMm - bodyMm - 0.6, edgeMm + 5.2]
  const frame = held.map(({ x }) => {
    const right = x + 2.6
    return `M${x - 1.2} ${top}L${right} ${top}L${right} ${bottom}L${x} ${bottom}`
  })
  const screw = held.map(
    ({ x }) =>
      linePath([x, bottom + 2.2], [x, edgeMm + 1.6]) +
      linePath([x - 1.6, bottom + 2.2], [x + 1.6, bottom + 2.2]) +
      linePath([x - 1.2, edgeMm + 1.2], [x + 1.2, edgeMm + 1.2]),
  )
  const all = [...frame, ...screw].join('')
  return [...stroked(all, 'ground', 2), ...stroked(all, 'stop', 1)]
}

function handMarks(placed: readonly Placed[], edgeMm: number): Mark[] {
  const boxY = edgeMm + hangMm + 4
  const boxes = placed
    .filter(({ graduation }) => graduation.state !== 'not needed')
    .map(({ x }) => rectPath(x - 1.9, boxY, 3.8, 3.8))
    .join('')
  const ticks = join(
    placed,
    ['done'],
    ({ x }) => `M${x - 1.2} ${boxY + 2}L${x - 0.3} ${boxY + 3}L${x + 1.5} ${boxY + 0.4}`,
  )
  return [
    ...placed.flatMap(({ graduation, x }) =>
      text([x + 0.9, edgeMm - bodyMm - 1.2], graduation.label, nameMm, {
        turnDeg: nameTurnDeg,
        tone: graduation.state === 'not needed' ? 'faint' : 'ink',
      }),
    ),
    ...placed.flatMap(({ number, x }) => text([x, edgeMm + hangMm + 3], String(number), 2.6, { anchor: 'middle' })),
    ...stroked(boxes, 'ink', 0.3),
    ...stroked(ticks, 'ink', 0.5),
  ]
}

function inWords(graduations: readonly Graduation[]): string {
  const told = ['ready', 'started', 'do again', 'waived', 'to do'] as const
  const done = graduations.filter(({ state }) => state === 'done').length
  const parts = told.flatMap((state) => {
    const labels = graduations.filter((g) => g.state === state).map((g) => g.label + (g.outside ? ' (outside)' : ''))
    return labels.length === 0 ? [] : [`${state}: ${labels.join('; ')}`]
  })
  const held = graduations.filter((g) => g.held).map((g) => g.label)
  const hold = held.length === 0 ? [] : [`held at: ${held.join('; ')}`]
  return [`${done} of ${graduations.length} done`, ...hold, ...parts].join('. ') + '.'
}
