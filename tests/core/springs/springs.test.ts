import { fraction, number, type Fraction } from 'mathjs'
import { describe, expect, it, test } from 'vitest'
import { must } from '@/lib/core/errors'
import { shimChoice } from '@/lib/core/springs/shim-choice'
import { usableLift } from '@/lib/core/springs/usable-lift'

const f = (text: string): Fraction => fraction(text) as Fraction
const asNumber = (value: Fraction): number => number(value)

const margins = { retainerMarginIn: 0.05, coilBindMarginIn: 0.06 }

describe('usable lift', () => {
  // In exact fractions: retainer to seal − 0.050; installed − coil bind − 0.060; the lesser.
  test.each([
    ['0.642', '1.800', '1.060', '0.550', 'retainer'],
    ['0.800', '1.800', '1.060', '0.550', 'coil-bind'],
    ['0.730', '1.800', '1.060', '0.700', 'retainer'],
    ['0.040', '1.800', '1.060', '0.400', 'retainer'],
  ] as const)('%s, %s, %s, lift %s', (retainer, installed, bind, lift, boundBy) => {
    const byRetainer = f(retainer).sub(f('0.050'))
    const bySpring = f(installed).sub(f(bind)).sub(f('0.060'))
    const usable = byRetainer.compare(bySpring) <= 0 ? byRetainer : bySpring
    const answer = must(
      usableLift({
        retainerToSealIn: Number(retainer),
        installedHeightIn: Number(installed),
        coilBindIn: Number(bind),
        liftIn: Number(lift),
        ...margins,
      }),
    )
    expect(answer.usableIn).toBeCloseTo(asNumber(usable), 12)
    expect(answer.spareIn).toBeCloseTo(asNumber(usable.sub(f(lift))), 12)
    expect(answer.boundBy).toBe(boundBy)
    expect(answer.enough).toBe(usable.compare(f(lift)) >= 0)
  })

  it('just enough is enough, as typed: 0.642 − 0.050 = 0.592', () => {
    const fit = { retainerToSealIn: 0.642, installedHeightIn: 1.9, coilBindIn: 1.06, ...margins }
    expect(must(usableLift({ ...fit, liftIn: 0.592 })).enough).toBe(true)
    expect(must(usableLift({ ...fit, liftIn: 0.5921 })).enough).toBe(false)
  })

  it('says what is missing', () => {
    const fit = { retainerToSealIn: 0.6, installedHeightIn: null, coilBindIn: 1, liftIn: null, ...margins }
    expect(usableLift(fit)).toMatchObject({ ok: false, refusal: { needs: ['installedHeightIn', 'liftIn'] } })
  })
})

describe('which shims', () => {
  const base = { installedHeightIn: 1.8, liftIn: 0.55, rateLbfPerIn: 400 }
  const choose = (seatLbf: number, wantedLbf: number, shimsIn: readonly number[], rateLbfPerIn = 400) =>
    must(shimChoice({ ...base, rateLbfPerIn, seatLbf, wantedLbf, shimsIn }))

  // (125 − 110)/400 = 3/80 = 0.0375. 0.030 and 0.015 + 0.030 = 0.045 are both 0.0075 off: the thinner counts.
  // 0.030·400 = 12: 122 on the seat; 122 + 400·0.55 = 342 open; 1.800 − 0.030 = 1.770.
  test('of two equally near the thinner', () => {
    const answer = choose(110, 125, [0.015, 0.03, 0.06])
    expect(answer.shimsIn).toEqual([0.03])
    expect(answer.idealIn).toBeCloseTo(asNumber(f('15').div(f('400'))), 12)
    expect(answer.seatLbf).toBeCloseTo(122, 9)
    expect(answer.openLbf).toBeCloseTo(342, 9)
    expect(answer.installedHeightIn).toBeCloseTo(1.77, 12)
  })

  // Every stack of none, one or two in exact fractions, the nearest by exact comparison, the thinner of two.
  const shims = ['0.015', '0.030', '0.060']
  const stacks = [[], ...shims.map((one) => [one]), ...shims.flatMap((a, i) => shims.slice(i).map((b) => [a, b]))]
  const totals = stacks.map((stack) => stack.reduce((sum, one) => sum.add(f(one)), f('0')))
  test.each([
    ['100', '140', '350'],
    ['128', '135', '355'],
    ['90', '130', '333'],
    ['120', '121', '400'],
    ['100', '200', '250'],
    ['115', '127', '400'],
    ['110', '119', '300'],
    ['110', '100', '400'],
    ['110', '110', '400'],
  ])('%s lbf, %s wanted, %s lbf/in', (seat, wanted, rate) => {
    const ideal = f(wanted).sub(f(seat)).div(f(rate))
    const best = [...totals]
      .sort((a, b) => a.compare(b))
      .reduce((least, total) => (total.sub(ideal).abs().compare(least.sub(ideal).abs()) < 0 ? total : least))
    const total = ideal.compare(f('0')) <= 0 ? f('0') : best
    const answer = choose(Number(seat), Number(wanted), shims.map(Number), Number(rate))
    expect(answer.totalIn).toBeCloseTo(asNumber(total), 12)
    expect(answer.seatLbf).toBeCloseTo(asNumber(f(seat).add(f(rate).mul(total))), 9)
    expect(answer.openLbf).toBeCloseTo(asNumber(f(seat).add(f(rate).mul(total.add(f('0.55'))))), 9)
    expect(answer.installedHeightIn).toBeCloseTo(asNumber(f('1.8').sub(total)), 12)
  })

  test('two of one thickness', () => {
    // 12/100 = 0.120 = 0.060 twice.
    expect(choose(100, 112, [0.015, 0.06], 100).shimsIn).toEqual([0.06, 0.06])
  })
  test('one of 0.030 before two of 0.015', () => {
    expect(choose(100, 112, [0.015, 0.03]).shimsIn).toEqual([0.03])
  })
  test('a shop without shims: none', () => {
    expect(choose(100, 150, [])).toMatchObject({ shimsIn: [], totalIn: 0, seatLbf: 100, openLbf: 320 })
  })
})
