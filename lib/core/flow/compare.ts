import { ok, refuse, type Result } from '../errors'
import { meanFlow, monotoneCurve, repeatedLift, type FlowCurve } from './curve'
import { checkLimits, leastFlowCfm } from './limits'
import { likeForLike } from './like-for-like'
import { correctedPoints } from './run'
import type { FlowPoint, FlowRun } from './types'

export type Bench = {
  /** One standard deviation of a single run, as a share of the reading, from repeat runs. */
  readonly repeatability: number
}

/** Common practice, for a bench whose own repeat runs are not on record. */
export const defaultBench: Bench = { repeatability: 0.01 }

export type FlowDifference = {
  readonly beforeCfm: number | null
  readonly afterCfm: number | null
  readonly diffCfm: number | null
  /** Of the run before; null when that was as good as zero or not taken. */
  readonly diffPercent: number | null
  /** Null when there is no difference to judge. */
  readonly withinRepeatability: boolean | null
}

export type FlowRow = FlowDifference & {
  readonly liftIn: number
  /** Why there is no reading; null when there is one. */
  readonly notTakenBefore: string | null
  readonly notTakenAfter: string | null
}

export const flowBands = ['low', 'middle', 'high', 'whole'] as const
export type FlowBand = (typeof flowBands)[number]

export type FlowMean = FlowDifference & {
  readonly band: FlowBand
  readonly fromIn: number
  readonly toIn: number
}

export type FlowComparison = {
  readonly rows: readonly FlowRow[]
  /** Empty when the two runs share no span of lift. */
  readonly means: readonly FlowMean[]
  /** What is not like for like, in words; then no difference may be called a gain or a loss. */
  readonly differs: readonly string[]
  /** "different head", "before converted from 10 to 28 inH₂O". */
  readonly remarks: readonly string[]
}

/**
 * Two flow runs of one port held against each other, lift by lift and in the mean.
 *
 * @param before run before; its flow is converted to the pressure of the run after
 * @param after run after
 * @param bench repeatability, share of the reading, 0–0.2
 * @returns differences after − before in cfm and per cent; means over the low, middle and high third of the span of lift
 *   that both runs cover, and over the whole of it
 *
 * Both runs have their leak subtracted. A difference of two runs scatters √2 as much as one, so what is within 2·√2 of
 * the repeatability is said to be so. Example: 200 before, 204 after, repeatability 1 % → +4 cfm, +2.0 %, within 2.8 %.
 * Derived: two runs of one scatter differ by √2 of it.
 */
export function compareFlow(before: FlowRun, after: FlowRun, bench: Bench = defaultBench): Result<FlowComparison> {
  const checked = checkLimits({ repeatability: bench.repeatability })
  if (!checked.ok) return checked
  if (before.conditions.port !== after.conditions.port) {
    return refuse('contradiction', 'An intake run cannot be held against an exhaust run.')
  }
  const [from, to] = [before.conditions.testPressureInH2O, after.conditions.testPressureInH2O]
  const beforePoints = correctedPoints(before, from === null ? null : to)
  if (!beforePoints.ok) return beforePoints
  const afterPoints = correctedPoints(after, null)
  if (!afterPoints.ok) return afterPoints
  const twice = repeatedLift(beforePoints.value) ?? repeatedLift(afterPoints.value)
  if (twice !== undefined) return refuse('contradiction', `The lift ${twice} in is there twice.`)
  return ok({
    rows: rowsOf(beforePoints.value, afterPoints.value, bench),
    means: meansOf(beforePoints.value, afterPoints.value, bench),
    ...likeForLike(before.conditions, after.conditions),
  })
}

function rowsOf(before: readonly FlowPoint[], after: readonly FlowPoint[], bench: Bench): FlowRow[] {
  const byLift = (points: readonly FlowPoint[]) => new Map(points.map((point) => [point.liftIn, point]))
  const [left, right] = [byLift(before), byLift(after)]
  const lifts = [...new Set([...left.keys(), ...right.keys()])].sort((a, b) => a - b)
  return lifts.map((liftIn) => {
    const [a, b] = [left.get(liftIn), right.get(liftIn)]
    return {
      liftIn,
      ...difference(a?.flowCfm ?? null, b?.flowCfm ?? null, bench),
      notTakenBefore: whyNot(a),
      notTakenAfter: whyNot(b),
    }
  })
}

function whyNot(point: FlowPoint | undefined): string | null {
  if (point === undefined) return 'not run at this lift'
  return point.flowCfm === null ? (point.notTaken ?? 'no reason noted') : null
}

function difference(beforeCfm: number | null, afterCfm: number | null, bench: Bench): FlowDifference {
  if (beforeCfm === null || afterCfm === null) {
    return { beforeCfm, afterCfm, diffCfm: null, diffPercent: null, withinRepeatability: null }
  }
  const diffCfm = afterCfm - beforeCfm
  return {
    beforeCfm,
    afterCfm,
    diffCfm,
    diffPercent: beforeCfm < leastFlowCfm ? null : (100 * diffCfm) / beforeCfm,
    withinRepeatability: Math.abs(diffCfm) <= 2 * Math.SQRT2 * bench.repeatability * beforeCfm,
  }
}

function meansOf(before: readonly FlowPoint[], after: readonly FlowPoint[], bench: Bench): FlowMean[] {
  const [left, right] = [monotoneCurve(taken(before)), monotoneCurve(taken(after))]
  if (!left.ok || !right.ok) return []
  const fromIn = Math.max(firstLift(left.value), firstLift(right.value))
  const toIn = Math.min(lastLift(left.value), lastLift(right.value))
  if (!(fromIn < toIn)) return []
  const lowIn = fromIn + (toIn - fromIn) / 3
  const highIn = toIn - (toIn - fromIn) / 3
  const bands: Readonly<Record<FlowBand, readonly [number, number]>> = {
    low: [fromIn, lowIn],
    middle: [lowIn, highIn],
    high: [highIn, toIn],
    whole: [fromIn, toIn],
  }
  return flowBands.flatMap((band) => {
    const [start, end] = bands[band]
    const a = meanFlow(left.value, start, end)
    const b = meanFlow(right.value, start, end)
    if (!a.ok || !b.ok) return []
    return [{ band, fromIn: start, toIn: end, ...difference(a.value, b.value, bench) }]
  })
}

const firstLift = (curve: FlowCurve): number => curve[0]?.liftIn ?? Infinity
const lastLift = (curve: FlowCurve): number => curve[curve.length - 1]?.liftIn ?? -Infinity

/** The points that have a reading. */
export const taken = (points: readonly FlowPoint[]): readonly { readonly liftIn: number; readonly flowCfm: number }[] =>
  points.flatMap(({ liftIn, flowCfm }) => (flowCfm === null ? [] : [{ liftIn, flowCfm }]))
