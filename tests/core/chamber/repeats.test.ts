import { add, divide, fraction, multiply, number, pow, subtract, type Fraction } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { chamberMean, shopRepeatability, type BuretteFacts } from '../../../lib/core/chamber/burette'
import { chamberChanges, type ChamberChange, type ChangeFacts } from '../../../lib/core/chamber/changes'
import { chamberOfPoint, millPoint } from '../../../lib/core/chamber/mill-point'
import {
  pooledSpreadCc,
  repeatabilityOf,
  sumOfTallies,
  tallyOf,
  wildRepeat,
} from '../../../lib/core/chamber/repeatability'
import { repeatSets, repeatsOfHead, standingRepeats, type CcReading } from '../../../lib/core/chamber/repeats'
import { must } from '../../../lib/core/errors'

const exact = (text: string): Fraction => fraction(text)

/** Σ(x − x̄)² in exact fractions. */
function squaresOf(readings: readonly string[]): Fraction {
  const values = readings.map(exact)
  const sum = values.reduce((all, value) => add(all, value) as Fraction, exact('0'))
  const about = divide(sum, exact(String(values.length))) as Fraction
  return values.reduce((all, value) => add(all, pow(subtract(value, about), 2)) as Fraction, exact('0'))
}

describe('the spread of one reading', () => {
  it('repeats in exact fractions: 62.1, 62.3, 62.7', () => {
    // Mean 62.3667: (−4/15)² + (−1/15)² + (1/3)² = 14/75.
    const squares = squaresOf(['62.1', '62.3', '62.7'])
    expect(squares.toFraction()).toBe('14/75')
    const tally = tallyOf([62.1, 62.3, 62.7])
    expect(tally.squaresCc2).toBeCloseTo(number(squares) as number, 12)
    expect(tally.degrees).toBe(2)
    expect(tallyOf([62])).toEqual({ squaresCc2: 0, degrees: 0 })
    expect(tallyOf([])).toEqual({ squaresCc2: 0, degrees: 0 })
  })

  it('is the default until the shop has ten degrees of freedom', () => {
    expect(repeatabilityOf({ squaresCc2: 0.36, degrees: 9 }, 0.3)).toEqual({ sCc: 0.3, degrees: 3, isDefault: true })
    const learned = repeatabilityOf({ squaresCc2: 0.4, degrees: 10 }, 0.3)
    expect(learned).toMatchObject({ degrees: 10, isDefault: false })
    expect(learned.sCc).toBeCloseTo(0.2, 12) // √0.04
  })

  it('pooled with the default, in exact fractions: (3·0.09 + Σ)/(3 + n − 1)', () => {
    const own = squaresOf(['62.0', '63.0'])
    const pooled = divide(add(multiply(exact('3'), exact('0.09')), own), exact('4')) as Fraction
    expect(pooled.toFraction()).toBe('77/400') // (0.27 + 0.5)/4
    const shop = repeatabilityOf({ squaresCc2: 0, degrees: 0 }, 0.3)
    expect(pooledSpreadCc(tallyOf([62, 63]), shop) ** 2).toBeCloseTo(number(pooled) as number, 12)
  })

  it('the default is a floor; what the shop has learned is not', () => {
    const shop = { sCc: 0.3, degrees: 3, isDefault: true }
    expect(pooledSpreadCc(tallyOf([62, 62]), shop)).toBe(0.3)
    // (10·0.09 + 0)/(10 + 1) = 0.081818.
    const learned = { sCc: 0.3, degrees: 10, isDefault: false }
    expect(pooledSpreadCc(tallyOf([62, 62]), learned) ** 2).toBeCloseTo(0.9 / 11, 12)
  })

  it('a chamber is judged by the shop without its own repeats', () => {
    const burette: BuretteFacts = {
      divisionCc: 0.2,
      repeatabilityCc: 0.3,
      others: { squaresCc2: 0.27, degrees: 8 },
      own: [
        { ids: ['a', 'b', 'c'], tally: { squaresCc2: 0.13, degrees: 2 } },
        { ids: ['d', 'e'], tally: { squaresCc2: 0.5, degrees: 1 } },
      ],
    }
    // Without d and e: 0.27 + 0.13 with ten degrees.
    expect(shopRepeatability(burette, ['d']).sCc).toBeCloseTo(0.2, 12)
    // Without a, b and c nine degrees are left.
    expect(shopRepeatability(burette, ['b'])).toEqual({ sCc: 0.3, degrees: 3, isDefault: true })
    // (10·0.04 + 0.5)/11, two of them, and the division.
    const mean = must(chamberMean([62, 63], burette, ['d', 'e']))
    expect(mean.uCc).toBeCloseTo(Math.sqrt(0.9 / 11 / 2 + 0.04 / 12), 12)
    expect(sumOfTallies(burette.own?.map(({ tally }) => tally) ?? [])).toEqual({ squaresCc2: 0.63, degrees: 3 })
  })
})

describe('a wild repeat', () => {
  it('lies further than 3·s₀·√(1 + 1/m) from the mean of the m before it', () => {
    // m = 1: 0.9·√2 = 1.27279; m = 2: 0.9·√1.5 = 1.10227.
    expect(wildRepeat(65.17, [63.9], 0.3)).toBeNull()
    expect(wildRepeat(65.18, [63.9], 0.3)).toMatchObject({ meanCc: 63.9 })
    expect(wildRepeat(62.62, [63.9], 0.3)?.limitCc).toBeCloseTo(1.27279, 5)
    expect(wildRepeat(62.9, [63.9, 64.1], 0.3)).toBeNull()
    expect(wildRepeat(62.89, [63.9, 64.1], 0.3)?.offCc).toBeCloseTo(-1.11, 9)
    expect(wildRepeat(6.39, [63.9], 0.3)).not.toBeNull()
  })

  it('has nothing to be held against while the chamber was not read', () => {
    expect(wildRepeat(63.9, [], 0.3)).toBeNull()
  })
})

describe('what is a repeat', () => {
  const read = (id: string, seq: number, value: number, over: Partial<CcReading> = {}): CcReading => ({
    id,
    seq,
    kind: 'cc',
    point: '1',
    value,
    step: { stepId: 'chambers', occurrence: '', orderId: null },
    byId: 'one',
    instrumentId: 'burette',
    ...over,
  })
  const valuesOf = (sets: readonly (readonly CcReading[])[]) => sets.map((set) => set.map(({ value }) => value))
  const readings = [read('a', 2, 62.1), read('b', 4, 62.3), read('c', 4, 61, { point: '2' }), read('d', 8, 62.5)]

  it('one step, one chamber, nothing changed between', () => {
    expect(valuesOf(repeatSets(readings, []))).toEqual([[62.1, 62.3, 62.5], [61]])
    const cut: ChamberChange = { seq: 6, stepId: null }
    expect(valuesOf(repeatSets(readings, [cut]))).toEqual([[62.1, 62.3], [61], [62.5]])
    expect(valuesOf(standingRepeats(readings, [cut]))).toEqual([[62.5], [61]])
  })

  it('a depth saved with the reading came before it; work of the same step is in it already', () => {
    expect(valuesOf(standingRepeats(readings, [{ seq: 8, stepId: null }]))).toEqual([[62.5], [61]])
    expect(valuesOf(standingRepeats(readings, [{ seq: 2, stepId: null }]))).toEqual([[62.1, 62.3, 62.5], [61]])
    expect(valuesOf(standingRepeats(readings, [{ seq: 8, stepId: 'chambers' }]))).toEqual([[62.1, 62.3, 62.5], [61]])
    expect(valuesOf(standingRepeats(readings, [{ seq: 8, stepId: 'port' }]))).toEqual([[62.5], [61]])
  })

  it('other checking valves or another plug are another condition', () => {
    const named = (seq: number, text: string) => ({
      ...read(`v${seq}`, seq, 0),
      kind: 'valves-used',
      value: null,
      text,
    })
    const at = (...texts: readonly string[]) =>
      chamberChanges({
        readings: texts.map((text, place) => named(place * 2 + 3, text)),
        events: [],
        orders: [],
      } as unknown as ChangeFacts).map(({ seq }) => seq)
    expect(at('shop', 'Shop ', 'own', '', 'own')).toEqual([7])
  })

  it('teaches by person and burette, and says nothing alone', () => {
    const hands = [...readings, read('e', 9, 62.7, { byId: 'two' })]
    const own = repeatsOfHead(hands, [])
    expect(own).toHaveLength(1)
    expect(own[0]?.ids).toEqual(['a', 'b', 'd', 'e'])
    // 62.1, 62.3, 62.5: 0.04 + 0 + 0.04.
    expect(own[0]?.tally.squaresCc2).toBeCloseTo(0.08, 12)
    expect(own[0]?.tally.degrees).toBe(2)
  })

  it('a stop at the mill names its chamber', () => {
    expect(['1', '3'].map((chamber) => millPoint('at-stop', chamber))).toEqual(['at-stop', 'at-stop-3'])
    expect(['at-size', 'at-stop-12', '4'].map(chamberOfPoint)).toEqual(['1', '12', '4'])
  })
})
