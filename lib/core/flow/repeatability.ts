import { ok, refuse, type Result } from '../errors'
import { leastFlowCfm, leastLiftIn } from './limits'
import { likeForLike } from './like-for-like'
import { correctedPoints } from './run'
import type { FlowRun } from './types'
import { mean } from '../mean'

export type Repeatability = {
  /** One standard deviation of a single run, as a share of the reading. */
  readonly part: number
  /** Lifts that were read more than once. */
  readonly lifts: number
  /** How many independent differences stand behind it: readings less lifts. */
  readonly freedom: number
}

type Scatter = { readonly squares: number; readonly freedom: number; readonly lifts: number }

/**
 * How well a bench repeats itself, from runs of the same port that were made again with nothing changed.
 *
 * @param groups repeats of one port each; groups may differ in port, head and valve
 * @returns one standard deviation of a single run, a share of the reading, pooled over all lifts and groups
 *
 * Each reading is taken as a share of the mean at its lift, leak subtracted, at the pressure of the group's first run.
 * Assumes one relative scatter at every lift. Formula: √(Σ(q/q̄ − 1)² / Σ(n − 1)), n readings at a lift. Refused when no
 * lift was read twice, or when repeats are not like for like.
 * Example: 199 and 201 cfm at one lift → ±0.5 %, √(2·0.005²/1) = 0.71 %.
 * Derived: pooled standard deviation.
 */
export function repeatabilityOf(groups: readonly (readonly FlowRun[])[]): Result<Repeatability> {
  let total: Scatter = { squares: 0, freedom: 0, lifts: 0 }
  for (const runs of groups) {
    const own = scatterOf(runs)
    if (!own.ok) return own
    total = {
      squares: total.squares + own.value.squares,
      freedom: total.freedom + own.value.freedom,
      lifts: total.lifts + own.value.lifts,
    }
  }
  const { squares, freedom, lifts } = total
  if (freedom === 0) return refuse('missing', 'Needs one lift that was run twice.', { needs: ['repeat run'] })
  return ok({ part: Math.sqrt(squares / freedom), lifts, freedom })
}

function scatterOf(runs: readonly FlowRun[]): Result<Scatter> {
  const [first] = runs
  const byLift = new Map<number, number[]>()
  for (const run of runs) {
    const unlike = first ? unlikeWords(first, run) : ''
    if (unlike !== '') return refuse('contradiction', `These are not repeats: ${unlike}.`)
    const to = run.conditions.testPressureInH2O === null ? null : (first?.conditions.testPressureInH2O ?? null)
    const points = correctedPoints(run, to)
    if (!points.ok) return points
    for (const { liftIn, flowCfm } of points.value) {
      const key = Math.round(liftIn / leastLiftIn)
      if (flowCfm !== null) byLift.set(key, [...(byLift.get(key) ?? []), flowCfm])
    }
  }
  return ok([...byLift.values()].reduce(added, { squares: 0, freedom: 0, lifts: 0 }))
}

function unlikeWords(first: FlowRun, run: FlowRun): string {
  if (first.conditions.port !== run.conditions.port) return 'an intake and an exhaust run'
  const { differs, remarks } = likeForLike(first.conditions, run.conditions)
  // What neither run noted cannot have been changed on purpose between two runs made one after the other.
  const changed = differs.filter((words) => !words.endsWith('not noted'))
  return [...changed, ...remarks.filter((words) => words === 'different head')].join(', ')
}

function added(sum: Scatter, flows: readonly number[]): Scatter {
  const meanCfm = mean(flows)
  if (flows.length < 2 || meanCfm < leastFlowCfm) return sum
  return {
    squares: sum.squares + flows.reduce((a, b) => a + (b / meanCfm - 1) ** 2, 0),
    freedom: sum.freedom + flows.length - 1,
    lifts: sum.lifts + 1,
  }
}
