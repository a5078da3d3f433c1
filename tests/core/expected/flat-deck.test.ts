import { describe, expect, it } from 'vitest'
import { expected } from '@/lib/core/expected/expected'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import { stopsOf } from '@/lib/core/expected/stops'
import { heldAgainstWords } from '@/lib/words/expected'
import { unknownHead } from './facts'

const cut12: ExpectedFacts = {
  ...unknownHead,
  stepId: 'seat-after',
  cut: { shallowIn: 0.012, deepIn: 0.012 },
  before: { 'recession|1-intake': 0.04, 'recession|1-intake-2': 0.042, 'protrusion|1': 0.06 },
}

describe('a flat-deck head after 12 thou', () => {
  it('a valve: 40 less 12 is 28, within 5', () => {
    const held = expected('recession', '1-intake', cut12)
    expect(held?.value).toBeCloseTo(0.028, 12)
    expect(held?.low).toBeCloseTo(0.023, 12)
    expect(held?.high).toBeCloseTo(0.033, 12)
  })

  it('the second valve of a kind by its own figure', () => {
    expect(expected('recession', '1-intake-2', cut12)?.value).toBeCloseTo(0.03, 12)
  })

  it('a valve sunk 4: 28 and 4 are 32', () => {
    const sunk = { ...cut12, seatWorkSince: true, before: { ...cut12.before, 'sink|intake': 0.004 } }
    expect(expected('recession', '1-intake', sunk)?.value).toBeCloseTo(0.032, 12)
  })

  it('seat work that nobody measured leaves nothing to hold it against', () => {
    expect(expected('recession', '1-intake', { ...cut12, seatWorkSince: true })).toBeNull()
  })

  it('an injector: 60 and 12 are 72', () => {
    const held = expected('protrusion', '1', { ...cut12, stepId: 'finished' })
    expect(held?.value).toBeCloseTo(0.072, 12)
    expect(held && heldAgainstWords(held.why)).toBe('before, and 12 thou cut')
  })

  it('a cut that leans by its corners: between what its two edges leave', () => {
    // 12 thou at one edge, 16 at the other: 40 − 16 = 24 to 40 − 12 = 28, in the middle 26, each end 5 more.
    const leaning = { ...cut12, cut: { shallowIn: 0.012, deepIn: 0.016 } }
    const held = expected('recession', '1-intake', leaning)
    expect([held?.low, held?.value, held?.high].map((end) => Number(end?.toFixed(9)))).toEqual([0.019, 0.026, 0.033])
    // An injector: 60 + 12 = 72 to 60 + 16 = 76.
    const out = expected('protrusion', '1', { ...leaning, stepId: 'finished' })
    expect([out?.low, out?.value, out?.high].map((end) => Number(end?.toFixed(9)))).toEqual([0.067, 0.074, 0.081])
  })

  it('a valve that lies deeper than before, no seat work done, is a stop', () => {
    const typed = { ...cut12, here: { 'recession|1-intake': 0.0421 } }
    expect(stopsOf(typed)).toMatchObject([{ code: 'seat-deeper', beforeIn: 0.04, nowIn: 0.0421 }])
    expect(stopsOf({ ...typed, here: { 'recession|1-intake': 0.042 } })).toEqual([])
  })
})

describe('before any cut', () => {
  const here = { 'recession|1-intake': 0.04, 'recession|2-intake': 0.042, 'recession|1-exhaust': 0.09 }

  it('the other valves of its kind alone: 41 within 15', () => {
    const held = expected('recession', '2-intake-2', { ...unknownHead, stepId: 'seat-before', here })
    expect(held?.value).toBeCloseTo(0.041, 12)
    expect(held?.high).toBeCloseTo(0.056, 12)
  })

  it('the other injectors', () => {
    const facts = {
      ...unknownHead,
      stepId: 'seat-before',
      here: { 'protrusion|1': 0.06, 'protrusion|2': 0.064 },
    } as const
    const held = expected('protrusion', '3', facts)
    expect(held?.value).toBeCloseTo(0.062, 12)
    expect(held && heldAgainstWords(held.why)).toBe('the other injectors')
  })
})
