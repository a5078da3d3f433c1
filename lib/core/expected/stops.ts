import { cutHere } from './cut-here'
import { portOf } from '../readings/valves'
import { figureKey, knownKey, type ExpectedFacts } from './types'

/** Readings that cannot all be true: a code with its data, lengths in inches. `points`: those that must be looked at. */
export type Stop =
  | {
      readonly code: 'retainer-under-lift'
      readonly keys: readonly string[]
      readonly clearanceIn: number
      readonly liftIn: number | null
      readonly marginIn: number
    }
  | {
      readonly code: 'coil-bind-under-lift'
      readonly keys: readonly string[]
      readonly installedIn: number
      readonly coilBindIn: number
      readonly liftIn: number | null
      readonly marginIn: number
    }
  | {
      readonly code: 'thicker-after-cut'
      readonly keys: readonly string[]
      readonly beforeIn: number
      readonly nowIn: number
    }
  | {
      readonly code: 'seat-deeper'
      readonly keys: readonly string[]
      readonly beforeIn: number
      readonly nowIn: number
    }
  | {
      readonly code: 'leak-over-flow'
      readonly keys: readonly string[]
      readonly flowCfm: number
      readonly leakCfm: number
    }

/** Compared as typed decimals: to a millionth. */
const millionths = (value: number): number => Math.round(value * 1e6)
const isUnder = (value: number, least: number): boolean => millionths(value) < millionths(least)

/**
 * What cannot be true together among the readings of a step: each is a stop, to be put right or the head held.
 *
 * @param facts with what is typed among `here`
 *
 * Retainer to seal under the valve's lift and margin; installed height less coil bind under lift and margin; a corner
 * thicker after a cut, or a seat deeper without seat work, by over 2 thou; a leak above the flow. A lift that is not known
 * counts as none. Common practice, the margins too; the spring maker's figures go first.
 * Example: installed 1.050, coil bind 1.060 → a stop, whatever the lift.
 */
export function stopsOf(facts: ExpectedFacts): Stop[] {
  return Object.entries(facts.here).flatMap(([key, value]) => {
    const [kind, point = ''] = key.split('|')
    const stop = stopAt(kind ?? '', point, value, facts)
    return stop ? [stop] : []
  })
}

function stopAt(kind: string, point: string, value: number, facts: ExpectedFacts): Stop | null {
  if (kind === 'retainer-to-seal') return retainer(point, value, facts)
  if (kind === 'installed-height') return coilBind(point, value, facts)
  if (kind === 'thickness') return thicker(point, value, facts)
  if (kind === 'seat-depth' || kind === 'recession') return deeper(kind, point, value, facts)
  return kind === 'flow' ? leak(point, value, facts) : null
}

function retainer(point: string, clearanceIn: number, { liftIn, limits }: ExpectedFacts): Stop | null {
  const lift = liftIn[portOf(point)]
  const marginIn = limits.retainerMarginIn
  if (!isUnder(clearanceIn, (lift ?? 0) + marginIn)) return null
  const keys = [figureKey('retainer-to-seal', point)]
  return { code: 'retainer-under-lift', keys, clearanceIn, liftIn: lift, marginIn }
}

function coilBind(point: string, installedIn: number, { here, before, liftIn, limits }: ExpectedFacts): Stop | null {
  const key = knownKey(here, 'coil-bind', point) ?? knownKey(before, 'coil-bind', point) ?? ''
  const coilBindIn = here[key] ?? before[key]
  const lift = liftIn[portOf(point)]
  const marginIn = limits.coilBindMarginIn
  if (coilBindIn === undefined || !isUnder(installedIn - coilBindIn, (lift ?? 0) + marginIn)) return null
  const keys = [figureKey('installed-height', point), key]
  return { code: 'coil-bind-under-lift', keys, installedIn, coilBindIn, liftIn: lift, marginIn }
}

function thicker(point: string, nowIn: number, facts: ExpectedFacts): Stop | null {
  const key = figureKey('thickness', point)
  const beforeIn = facts.before[key]
  if (facts.stepId === 'thickness' || beforeIn === undefined || !wasCut(facts)) return null
  if (!isUnder(beforeIn + facts.limits.thickerAfterCutIn, nowIn)) return null
  return { code: 'thicker-after-cut', keys: [key], beforeIn, nowIn }
}

/** Nothing measured is not the same as nothing cut. */
function wasCut(facts: ExpectedFacts): boolean {
  const cut = cutHere(facts)
  return cut === null || Math.max(cut.shallowIn, cut.deepIn) > 0
}

function deeper(
  kind: 'seat-depth' | 'recession',
  point: string,
  nowIn: number,
  { stepId, before, limits, seatWorkSince }: ExpectedFacts,
): Stop | null {
  const key = figureKey(kind, point)
  const beforeIn = before[key]
  if (stepId !== 'seat-after' || beforeIn === undefined || seatWorkSince) return null
  if (!isUnder(beforeIn + limits.expectSeatDeeperIn, nowIn)) return null
  return { code: 'seat-deeper', keys: [key], beforeIn, nowIn }
}

function leak(point: string, flowCfm: number, { leakCfm }: ExpectedFacts): Stop | null {
  if (leakCfm === null || !isUnder(flowCfm, leakCfm)) return null
  return { code: 'leak-over-flow', keys: [figureKey('flow', point)], flowCfm, leakCfm }
}
