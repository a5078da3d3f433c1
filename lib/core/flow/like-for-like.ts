import type { FlowConditions } from './types'

/** How far two runs may differ in their fixture and still be held against each other, inches. */
export const boreFixtureToleranceIn = 0.01
export const valveToleranceIn = 0.005

/** Decimal inches are not exact in binary: 2.030 − 2.025 must still count as 0.005. */
const roundingIn = 1e-9

export type LikeForLike = {
  /** What makes the comparison unfair, in words; empty when like for like. */
  readonly differs: readonly string[]
  /** What was done to make it fair, or must head it. */
  readonly remarks: readonly string[]
}

/**
 * Says whether two runs may be held against each other, and if not, why.
 *
 * Like for like: bore fixture within 0.010 in, valve within 0.005 in, same entry and exhaust fitting, test pressure the
 * same or converted, leak read on both or on neither. What was not noted counts as different: it cannot be known.
 * Another head is a heading, not a difference: one port design may be measured on two heads.
 */
export function likeForLike(before: FlowConditions, after: FlowConditions): LikeForLike {
  const differs = [
    sizes('bore fixture', before.boreFixtureIn, after.boreFixtureIn, boreFixtureToleranceIn),
    sizes('valve', before.valveDiameterIn, after.valveDiameterIn, valveToleranceIn),
    words('entry fitting', before.entryFitting, after.entryFitting),
    words('exhaust fitting', before.exhaustFitting, after.exhaustFitting),
    unknownPressure(before, after),
    (before.leakCfm === null) === (after.leakCfm === null)
      ? ''
      : `leak read only ${before.leakCfm === null ? 'after' : 'before'}`,
  ]
  const remarks = [
    before.headId === after.headId ? '' : 'different head',
    converted(before.testPressureInH2O, after.testPressureInH2O),
  ]
  return { differs: differs.filter(said), remarks: remarks.filter(said) }
}

const said = (text: string): boolean => text !== ''

function sizes(name: string, before: number | null, after: number | null, tolerance: number): string {
  if (before === null && after === null) return `${name} not noted`
  if (before === null) return `${name} not noted before`
  if (after === null) return `${name} not noted after`
  if (Math.abs(before - after) <= tolerance + roundingIn) return ''
  return `${name} ${before.toFixed(3)} in before, ${after.toFixed(3)} in after`
}

function words(name: string, before: string, after: string): string {
  const same = before.trim().toLowerCase() === after.trim().toLowerCase()
  return same ? '' : `${name} ${before.trim() || 'not noted'} before, ${after.trim() || 'not noted'} after`
}

function unknownPressure(before: FlowConditions, after: FlowConditions): string {
  if (before.testPressureInH2O !== null && after.testPressureInH2O !== null) return ''
  if (before.testPressureInH2O === null && after.testPressureInH2O === null) return 'test pressure not noted'
  return `test pressure not noted ${before.testPressureInH2O === null ? 'before' : 'after'}`
}

function converted(before: number | null, after: number | null): string {
  if (before === null || after === null || before === after) return ''
  return `before converted from ${before} to ${after} inH₂O`
}
