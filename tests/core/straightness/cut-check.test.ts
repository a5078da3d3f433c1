import { describe, expect, it } from 'vitest'
import { cornersFit, edgesCut } from '../../../lib/core/straightness/corners-fit'
import { cutCheck } from '../../../lib/core/straightness/cut-check'

const marks = { flatIn: 0.02, angleIn: 0.063, angleDeg: null, deepIn: null, edge: null }
const wanted = { flatIn: 0.02, angleIn: 0.06, angleDeg: 0.5 }
const residual = { rmsIn: 0.001, worstIn: -0.003, worstPoint: 'intake-2' }

describe('a cut beside what was wanted and what was marked', () => {
  it('says of each part how far off it is, and whether that is within', () => {
    const rows = cutCheck({
      measured: { flatIn: 0.0205, angleIn: 0.0633, angleDeg: 0.6045, taperIn: 0.0012, residual },
      wanted,
      marks,
      toleranceIn: 0.002,
      milledWidthIn: 6,
    })
    expect(rows.map((row) => row.part)).toEqual(['flat', 'angle', 'degrees', 'taper', 'worst'])
    const [flat, angle, degrees, taper, worst] = rows
    expect(flat?.wanted?.off).toBeCloseTo(0.0005, 9)
    expect(flat?.wanted?.within).toBe(true)
    expect(angle?.wanted?.off).toBeCloseTo(0.0033, 9)
    expect(angle?.wanted?.within).toBe(false)
    expect(angle?.marked?.off).toBeCloseTo(0.0003, 9)
    expect(angle?.marked?.within).toBe(true)
    // atan(0.002/6.000) = 0.0191°: 0.1045° off is out.
    expect(degrees?.wanted?.within).toBe(false)
    expect(degrees?.marked).toBeNull()
    expect(taper?.wanted?.within).toBe(true)
    expect([worst?.wanted?.within, worst?.point]).toEqual([false, 'intake-2'])
  })

  it('the tolerance itself is within, a hair more is not', () => {
    const at = (flatIn: number) =>
      cutCheck({
        measured: { flatIn, angleIn: 0 },
        wanted,
        marks: null,
        toleranceIn: 0.002,
        milledWidthIn: 6,
      })[0]
    expect(at(0.022)?.wanted?.within).toBe(true)
    expect(at(0.0221)?.wanted?.within).toBe(false)
    expect(at(0.018)?.wanted?.within).toBe(true)
  })

  it('judges no angle while the width is not known, and shows what was not wanted without a verdict', () => {
    const rows = cutCheck({
      measured: { flatIn: 0.004, angleIn: 0, angleDeg: 0 },
      wanted: { flatIn: null, angleIn: 0, angleDeg: 0 },
      marks: null,
      toleranceIn: 0.002,
      milledWidthIn: null,
    })
    expect(rows.map((row) => [row.part, row.wanted?.within ?? null])).toEqual([
      ['flat', null],
      ['angle', true],
      ['degrees', null],
    ])
  })
})

describe('the four corners', () => {
  const deck = { deepEdge: 'intake', milledWidthIn: 7, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } } as const
  const all = (intake: number, exhaust: number) => ({
    'intake-1': intake,
    'intake-2': intake,
    'exhaust-1': exhaust,
    'exhaust-2': exhaust,
  })

  it('a cut deep at the intake edge: flat at the exhaust edge, the angle part at the other', () => {
    // Square to the old deck 4.480 and 4.417; tan φ = 0.063/7, cos φ = 0.9999595; gauged on the new deck: times that.
    const after = all(4.417 * 0.9999595, 4.48 * 0.9999595)
    const fit = cornersFit(deck, all(4.5, 4.5), after)
    expect(fit.ok && fit.value.flatIn).toBeCloseTo(0.02, 6)
    expect(fit.ok && fit.value.angleIn).toBeCloseTo(0.063, 6)
    const edges = edgesCut(deck, all(4.5, 4.5), after)
    expect(edges?.shallowIn).toBeCloseTo(0.02, 6)
    expect(edges?.deepIn).toBeCloseTo(0.083, 6)
  })

  it('without an edge nothing is said of it', () => {
    expect(edgesCut(deck, all(4.5, 4.5), { 'intake-1': 4.48, 'intake-2': 4.48 })).toBeNull()
    expect(cornersFit(deck, all(4.5, 4.5), {}).ok).toBe(false)
  })
})
