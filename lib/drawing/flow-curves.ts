import { monotoneCurve, type FlowCurve } from '@/lib/core/flow/curve'
import type { SpecFlowPoint } from '@/lib/core/spec/spec-sheet'
import { ticks } from './axis'
import {
  at,
  ellipsePath,
  filled,
  linePath,
  outlined,
  polygonPath,
  rectPath,
  stroked,
  text,
  type Drawing,
  type Mark,
  type Point,
} from './marks'

export type FlowCurvesSetting = {
  readonly title: string
  readonly widthMm: number
  readonly heightMm: number
  /** The runs may not be held against each other: said in the picture. */
  readonly notLike?: boolean
}

type Taken = { readonly liftIn: number; readonly flowCfm: number }

type Plot = {
  readonly place: (liftIn: number, flowCfm: number) => Point
  readonly lifts: readonly number[]
  readonly flows: readonly number[]
}

const leftMm = 13
const topMm = 6
const bottomMm = 11

/** A run with the name that stands at its curve's end. */
export type NamedPoints = { readonly name: string; readonly points: readonly SpecFlowPoint[] }

type Style = {
  readonly widthMm: number
  readonly dashMm?: readonly [number, number]
  readonly marks: (places: readonly Point[]) => readonly Mark[]
}

/** The last run: the one the eye is to follow. */
const heavy: Style = {
  widthMm: 0.75,
  marks: (places) => filled(places.map((place) => ellipsePath(place, 0.8)).join(''), 'ink'),
}

/** The runs before it, told apart by dash and by point; in grey as in colour. */
const light: readonly Style[] = [
  {
    widthMm: 0.35,
    dashMm: [1.6, 1],
    marks: (places) => outlined(places.map((place) => ellipsePath(place, 0.8)).join(''), 'ink', 0.3),
  },
  {
    widthMm: 0.35,
    dashMm: [0.5, 0.8],
    marks: (places) => outlined(places.map(([x, y]) => rectPath(x - 0.75, y - 0.75, 1.5, 1.5)).join(''), 'ink', 0.3),
  },
  {
    widthMm: 0.35,
    dashMm: [3.2, 1],
    marks: (places) => filled(places.map((place) => diamondPath(place, 1)).join(''), 'ink'),
  },
  {
    widthMm: 0.35,
    marks: (places) => outlined(places.map((place) => diamondPath(place, 1)).join(''), 'ink', 0.3),
  },
]

const diamondPath = ([x, y]: Point, reach: number): string =>
  polygonPath([
    [x, y - reach],
    [x + reach, y],
    [x, y + reach],
    [x - reach, y],
  ])

/**
 * Flow against lift, before thin and dashed with open points, after heavy with solid ones, each named at its end; so it
 * reads in grey. A lift that was asked for and could not be taken is crossed on the axis.
 */
export const flowCurves = (
  before: readonly SpecFlowPoint[],
  after: readonly SpecFlowPoint[],
  setting: FlowCurvesSetting,
): Drawing =>
  flowRunCurves(
    [
      { name: 'before', points: before },
      { name: 'after', points: after },
    ],
    setting,
  )

/** Any number of runs in the same manner, the last of them heavy; the fifth light one looks like the first again. */
export function flowRunCurves(runs: readonly NamedPoints[], setting: FlowCurvesSetting): Drawing {
  const all = runs.flatMap(({ points }) => points)
  const plot = plotOf(all, setting, namesMm(runs))
  const drawn = runs.map(({ name, points }, place) => ({
    name,
    points: taken(points),
    style: (place === runs.length - 1 ? undefined : light[place % light.length]) ?? heavy,
  }))
  return {
    widthMm: setting.widthMm,
    heightMm: setting.heightMm,
    title: setting.title,
    description: [...runs.map(inWords), ...(setting.notLike ? ['Not like for like.'] : [])].join(' '),
    marks: [
      ...axes(plot),
      ...notTaken(all, plot),
      ...drawn.flatMap(({ points, style }) => [
        ...stroked(curvePath(points, plot), 'ink', style.widthMm, style.dashMm),
        ...style.marks(points.map(({ liftIn, flowCfm }) => plot.place(liftIn, flowCfm))),
      ]),
      ...names(drawn, plot),
      ...(setting.notLike ? text([leftMm + 3, topMm - 2.2], 'not like for like', nameSizeMm, { bold: true }) : []),
    ],
  }
}

const nameSizeMm = 3.3
/** Room at the right for the longest name; Barlow's letters are about half as wide as high. */
const namesMm = (runs: readonly NamedPoints[]): number =>
  Math.max(19, ...runs.map(({ name }) => 4 + name.length * nameSizeMm * 0.55))

const taken = (points: readonly SpecFlowPoint[]): Taken[] =>
  points
    .flatMap(({ liftIn, flowCfm }) => (flowCfm === null ? [] : [{ liftIn, flowCfm }]))
    .sort((a, b) => a.liftIn - b.liftIn)

function plotOf(points: readonly SpecFlowPoint[], { widthMm, heightMm }: FlowCurvesSetting, rightMm: number): Plot {
  const lifts = ticks(Math.max(0.1, ...points.map((point) => point.liftIn)), 8)
  const flows = ticks(Math.max(10, ...points.map((point) => point.flowCfm ?? 0)), 5)
  const [mostLift, mostFlow] = [lifts[lifts.length - 1] ?? 1, flows[flows.length - 1] ?? 1]
  return {
    lifts,
    flows,
    place: (liftIn, flowCfm) => [
      leftMm + (liftIn / mostLift) * (widthMm - leftMm - rightMm),
      heightMm - bottomMm - (flowCfm / mostFlow) * (heightMm - topMm - bottomMm),
    ],
  }
}

function axes({ place, lifts, flows }: Plot): Mark[] {
  const mostLift = lifts[lifts.length - 1] ?? 1
  const grid = flows.slice(1).map((flow) => linePath(place(0, flow), place(mostLift, flow)))
  const [x0, y0] = place(0, 0)
  const [x1] = place(mostLift, 0)
  const small = lifts.map((lift) => {
    const [x, y] = place(lift, 0)
    return linePath([x, y], [x, y + 1])
  })
  return [
    ...stroked(grid.join(''), 'faint', 0.12),
    ...stroked(linePath([x0, y0], [x1, y0]) + small.join(''), 'ink', 0.35),
    ...lifts.flatMap((lift) =>
      text([place(lift, 0)[0], y0 + 4.2], lift.toFixed(2).replace(/^0/, ''), 2.9, { anchor: 'middle' }),
    ),
    ...flows.flatMap((flow) => text([x0 - 1.5, place(0, flow)[1] + 1], String(flow), 2.9, { anchor: 'end' })),
    ...text([x0 - 1.5, topMm - 2.2], 'cfm', 2.9, { anchor: 'end' }),
    ...text([(x0 + x1) / 2, y0 + 8.4], 'valve lift, in', 2.9, { anchor: 'middle' }),
  ]
}

/** Bézier handles at a third of each piece draw a cubic of known end slopes exactly. */
function curvePath(points: readonly Taken[], { place }: Plot): string {
  const made = monotoneCurve(points)
  if (!made.ok) return ''
  const curve: FlowCurve = made.value
  const handle = (knot: FlowCurve[number], reach: number) =>
    at(place(knot.liftIn + reach, knot.flowCfm + knot.slope * reach))
  return curve
    .map((knot, i) => {
      const previous = curve[i - 1]
      const here = at(place(knot.liftIn, knot.flowCfm))
      if (previous === undefined) return `M${here}`
      const third = (knot.liftIn - previous.liftIn) / 3
      return `C${handle(previous, third)} ${handle(knot, -third)} ${here}`
    })
    .join('')
}

function notTaken(points: readonly SpecFlowPoint[], { place }: Plot): Mark[] {
  const lifts = [...new Set(points.filter((point) => point.flowCfm === null).map((point) => point.liftIn))]
  const last = Math.max(...lifts)
  const crosses = lifts.map((lift) => {
    const [x, y] = place(lift, 0)
    return linePath([x - 1, y - 3], [x + 1, y - 1]) + linePath([x - 1, y - 1], [x + 1, y - 3])
  })
  return [
    ...stroked(crosses.join(''), 'ink', 0.35),
    ...(lifts.length === 0
      ? []
      : text([place(last, 0)[0], place(last, 0)[1] - 4.2], 'not taken', 2.9, { anchor: 'middle' })),
  ]
}

type Drawn = { readonly name: string; readonly points: readonly Taken[]; readonly style: Style }

/** Names at the ends of the curves, from the top down, each kept clear of the one above it when the ends lie close. */
function names(drawn: readonly Drawn[], { place }: Plot): Mark[] {
  const gap = 3.6
  const ends = drawn
    .flatMap(({ name, points, style }) => {
      const last = points[points.length - 1]
      if (!last) return []
      const [x, y] = place(last.liftIn, last.flowCfm)
      return [{ name, x, y, bold: style === heavy }]
    })
    .sort((a, b) => a.y - b.y)
  const placed: { x: number; y: number }[] = []
  return ends.flatMap(({ name, x, y, bold }) => {
    const above = placed.filter((other) => Math.abs(other.x - x) < 14).map((other) => other.y + gap)
    const free = Math.max(y, ...above)
    placed.push({ x, y: free })
    return text([x + 2, free + 1.1], name, nameSizeMm, { bold })
  })
}

function inWords({ name, points }: NamedPoints): string {
  if (points.length === 0) return `No run ${name}.`
  const list = [...points]
    .sort((a, b) => a.liftIn - b.liftIn)
    .map((p) => `${p.liftIn.toFixed(3)} in ${p.flowCfm === null ? 'not taken' : `${p.flowCfm.toFixed(1)} cfm`}`)
  return `${name[0]?.toUpperCase() ?? ''}${name.slice(1)}: ${list.join(', ')}.`
}
