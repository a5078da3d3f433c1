import type { CastingFacts } from '../casting/figures'
import type { ReadingFact } from '../readings/types'
import { portOf, valveCountsOf, valvePoint, valvesOf } from '../readings/valves'
import { flatDeckLimitsOf, judgeByLimits, type FlatDeckLimits } from './maker-limits'

/** What the route must know of a head whose valves sit in a flat face. */
export type FlatDeckFacts = {
  /** Every valve by name: each is read by itself. */
  readonly valves: readonly string[]
  /** The record has limits of the engine maker for an injector. */
  readonly hasInjectors: boolean
  readonly limits: FlatDeckLimits
}

/**
 * A flat-deck head as the route sees it, by its casting record.
 *
 * @param chambers 1–12
 *
 * By definition. Example: a limit for the injector on record → injectors are read.
 */
export function flatDeckFactsOf(casting: CastingFacts, chambers: number): FlatDeckFacts {
  const limits = flatDeckLimitsOf(casting)
  const { leastIn, mostIn } = limits.protrusion
  return {
    valves: valvesOf(chambers, valveCountsOf(casting)).map(valvePoint),
    hasInjectors: leastIn !== null || mostIn !== null,
    limits,
  }
}

export type PastMaker = {
  readonly what: 'recession' | 'protrusion' | 'thickness'
  readonly side: 'under' | 'over'
  readonly valueIn: number
  readonly limitIn: number
}

/**
 * How a reading of a flat-deck head lies past the limits on record, in inches.
 *
 * @returns null: inside them, or there is no limit for it
 *
 * Derived: as `judgeByLimits`. Example: 1-exhaust read 0.021 where 0.024 is the minimum → under.
 */
export function pastMaker(
  { kind, point, value }: Pick<ReadingFact, 'kind' | 'point' | 'value'>,
  limits: FlatDeckLimits,
): PastMaker | null {
  if (value === null) return null
  const found = {
    recession: ['recession', limits.recession[portOf(point)]] as const,
    protrusion: ['protrusion', limits.protrusion] as const,
    thickness: ['thickness', { leastIn: limits.thicknessLeastIn, mostIn: null }] as const,
  }[kind as 'recession' | 'protrusion' | 'thickness'] as
    readonly [PastMaker['what'], FlatDeckLimits['protrusion']] | undefined
  if (!found) return null
  const [what, held] = found
  const { state } = judgeByLimits(value, held)
  if (state !== 'under' && state !== 'over') return null
  const limitIn = state === 'under' ? held.leastIn : held.mostIn
  return limitIn === null ? null : { what, side: state, valueIn: value, limitIn }
}
