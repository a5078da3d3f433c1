import { monotoneCurve, type FlowCurve } from '@/lib/core/flow/curve'
import type { SpecFlowPoint } from '@/lib/core/spec/spec-sheet'
import { ticks } from './axis'
import {
  at, ellipsePath, filled, linePath, outlined, stroked, text,
  type Drawing, type Mark, type Point,
} from './marks' // prettier-ignore

export type FlowCurvesSetting = {
  readonly title: string
  readonly widthMm: number
  readonly heightMm: number
}

type Taken = { readonly liftIn: number; readonly flowCfm: number }

type Plot = {
  readonly place: (liftIn: number, flowCfm: number) => Point
  readonly lifts: readonly number[]
  readonly flows: readonly number[]
}

const leftMm = 13
const rightMm = 19
const topMm = 6
const bottomMm = 11

/**
 * Flow against lift, before thin and dashed with open points, after heavy with solid ones, each named at its end; so it
 * reads in grey. A lift that was asked for and could not be taken is crossed on the axis.
 */
export function flowCurves(
  before: readonly SpecFlowPoint[],
  after: readonly SpecFlowPoint[],
  setting: FlowCurvesSetting,
): Drawing {
  const plot = plotOf([...before, ...after], setting)
  const [left, right] = [taken(before), taken(after)]
  return {
    widthMm: setting.widthMm,
    heightMm: setting.heightMm,
    title: setting.title,
    description: inWords(before, after),
    marks: [
      ...axes(plot),
      ...notTaken([...before, ...after], plot),
      ...stroked(curvePath(left, plot), 'ink', 0.35, [1.6, 1]),
      ...outlined(dots(left, plot), 'ink', 0.3),
      ...stroked(curvePath(right, plot), 'ink', 0.75),
      ...filled(dots(right, plot), 'ink'),
      ...names(left, right, plot),
    ],
  }
}

const taken = (points: readonly SpecFlowPoint[]): Taken[] =>
  points
    .flatMap(({ liftIn, flowCfm }) => (flowCfm === null ? [] : [{ liftIn, flowCfm }]))
    .sort((a, b) => a.liftIn - b.liftIn)

function plotOf(points: readonly SpecFlowPoint[], { widthMm, heightMm }: FlowCurvesSetting): Plot {
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

const dots = (points: readonly Taken[], { place }: Plot): string =>
  points.map(({ liftIn, flowCfm }) => ellipsePath(place(liftIn, flowCfm), 0.8)).join('')

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

/** Names at the ends of the curves, kept apart when the ends lie close. */
function names(before: readonly Taken[], after: readonly Taken[], { place }: Plot): Mark[] {
  const [a, b] = [before[before.length - 1], after[after.length - 1]]
  const gap = 3.4
  const afterAt = b && place(b.liftIn, b.flowCfm)
  let beforeAt = a && place(a.liftIn, a.flowCfm)
  if (
    beforeAt &&
    afterAt &&
    Math.abs(beforeAt[0] - afterAt[0]) < 14 &&
    Math.abs(beforeAt[1] - afterAt[1]) < gap
  ) {
    beforeAt = [beforeAt[0], afterAt[1] + (beforeAt[1] >= afterAt[1] ? gap : -gap)]
  }
  return [
    ...(beforeAt ? text([beforeAt[0] + 2, beforeAt[1] + 1.1], 'before', 3.3) : []),
    ...(afterAt ? text([afterAt[0] + 2, afterAt[1] + 1.1], 'after', 3.3, { bold: true }) : []),
  ]
}

function inWords(before: readonly SpecFlowPoint[], after: readonly SpecFlowPoint[]): string {
  const run = (name: string, points: readonly SpecFlowPoint[]) => {
    if (points.length === 0) return `No run ${name}.`
    const list = [...points]
      .sort((a, b) => a.liftIn - b.liftIn)
      .map(
        (p) =>
          `${p.liftIn.toFixed(3)} in ${p.flowCfm === null ? 'not taken' : `${p.flowCfm.toFixed(1)} cfm`}`,
      )
    return `${name[0]?.toUpperCase() ?? ''}${name.slice(1)}: ${list.join(', ')}.`
  }
  return `${run('before', before)} ${run('after', after)}`
}
