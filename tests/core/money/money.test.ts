import fc from 'fast-check'
import { fraction, multiply, type Fraction } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { formatAmount, parseAmount } from '@/lib/core/money/amount'
import { parsePercent, percentOf, taxText, taxWords } from '@/lib/core/money/percent'
import { parseQuantity, quantityText } from '@/lib/core/money/quantity'
import { lineNet, roundMinor, taxOn, totals } from '@/lib/core/money/totals'

const inLocale = (locale: string, currencyExponent = 2) => ({ locale, currencyExponent })

describe('an amount as typed', () => {
  it.each([
    ['125', 'en-US', 2, 12500],
    ['125.5', 'en-US', 2, 12550],
    ['125,50', 'en-US', 2, 12550],
    [' 0.05 ', 'en-US', 2, 5],
    ['125', 'en-US', 0, 125],
    ['1.234', 'en-US', 3, 1234],
    ['$1,250.00', 'en-US', 2, 125000],
    ['1,250', 'en-US', 2, 125000],
    ['1250', 'en-US', 2, 125000],
    ['1,250,000.5', 'en-US', 2, 125000050],
    ['1.250,00', 'en-US', 2, 125000],
    ['1.250,00', 'de-DE', 2, 125000],
    ['1.250', 'de-DE', 2, 125000],
    ['1,250.00', 'de-DE', 2, 125000],
    ['1.250 €', 'de-DE', 2, 125000],
    ['1 250,00 €', 'fr-FR', 2, 125000],
    ['1\u202f250,00\u00a0€', 'fr-FR', 2, 125000],
    ["CHF 1'250.00", 'de-CH', 2, 125000],
    ['CHF 1’250', 'de-CH', 2, 125000],
    ['USD 95', 'en-US', 2, 9500],
    ['£95.00', 'en-GB', 2, 9500],
    ['1,250', 'en-US', 0, 1250],
    ['20000000.00', 'en-US', 2, 2_000_000_000],
  ])('%s in %s with %i decimals', (text, locale, exponent, minor) => {
    expect(parseAmount(text, inLocale(locale, exponent))).toEqual({ ok: true, value: minor })
  })

  it.each([
    ['1.250', 'en-US', 2],
    ['1,250', 'de-DE', 2],
    ['12.345', 'en-US', 2],
    ['1.5', 'en-US', 0],
    ['-5', 'en-US', 2],
    ['', 'en-US', 2],
    ['$', 'en-US', 2],
    ['five', 'en-US', 2],
    ['12,50.00', 'en-US', 2],
    ['1,2,3', 'en-US', 2],
    ['1.2.3', 'en-US', 2],
    ['1,250.00.00', 'en-US', 2],
    ['1..5', 'en-US', 2],
    ['.5.', 'en-US', 2],
    ['95 each', 'en-US', 2],
    ['1e3', 'en-US', 2],
    ['٣', 'en-US', 2],
    ['20000000.01', 'en-US', 2],
    ['9999999999', 'en-US', 2],
  ])('refuses %j in %s with %i decimals', (text, locale, exponent) => {
    expect(parseAmount(text, inLocale(locale, exponent))).toMatchObject({ ok: false, refusal: { code: 'unreadable' } })
  })

  it('is the same however the locale itself writes it', () => {
    const locale = fc.constantFrom('en-US', 'en-GB', 'de-DE', 'de-CH', 'fr-FR', 'it-IT', 'es-ES', 'sv-SE', 'ja-JP')
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_999_999_999 }), locale, (minor, where) => {
        const digits = { minimumFractionDigits: 2, maximumFractionDigits: 2 }
        const text = new Intl.NumberFormat(where, digits).format(minor / 100)
        expect(parseAmount(text, inLocale(where))).toEqual({ ok: true, value: minor })
      }),
    )
  })
})

describe('an amount written again', () => {
  it('reads back as itself, in every locale', () => {
    expect([formatAmount(12550, 2), formatAmount(5, 2), formatAmount(0, 2), formatAmount(125, 0)]).toEqual([
      '125.50',
      '0.05',
      '0.00',
      '125',
    ])
    const [minor, exponent] = [fc.integer({ min: 0, max: 99_999_999 }), fc.integer({ min: 0, max: 3 })]
    fc.assert(
      fc.property(minor, exponent, fc.constantFrom('en-US', 'de-DE', 'fr-FR'), (amount, decimals, locale) => {
        const read = parseAmount(formatAmount(amount, decimals), inLocale(locale, decimals))
        expect(read).toEqual({ ok: true, value: amount })
      }),
    )
  })
})

describe('a quantity', () => {
  it.each([
    ['2', 2000],
    ['1.5', 1500],
    ['1,5 h', 1500],
    ['.25', 250],
    ['0.125', 125],
    ['9999', 9_999_000],
    ['3 pcs', 3000],
  ])('%s is %i thousandths', (text, thousandths) => {
    expect(parseQuantity(text)).toEqual({ ok: true, value: thousandths })
  })

  it.each(['0', '0.0', '', '-1', '1.2345', '10000', 'two', '1.5.5', '9999.5'])('refuses %j', (text) => {
    expect(parseQuantity(text)).toMatchObject({ ok: false, refusal: { code: 'unreadable' } })
  })

  it('reads back as itself', () => {
    expect([1500, 2000, 250, 1005].map(quantityText)).toEqual(['1.5', '2', '0.25', '1.005'])
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_000 }), (thousandths) => {
        expect(parseQuantity(quantityText(thousandths))).toEqual({ ok: true, value: thousandths })
      }),
    )
  })
})

/** The exact fraction, rounded to the whole nearest to it, a half away from zero. */
const halfAway = (exact: Fraction): number => {
  const twice = exact.abs().mul(2).add(1)
  const size = Number(twice.div(2).floor().toString())
  return exact.s < 0n ? 0 - size : size
}
const part = (of: number, numerator: number, denominator: number): Fraction =>
  multiply(fraction(of), fraction(numerator, denominator)) as Fraction

describe('what a document comes to', () => {
  it('rounds tax once', () => {
    // By hand: net 3 × 0.33 = 0.99; tax 0.99 × 8.25 % = 0.081675 → 0.08. Rounded line by line: 3 × round(0.027225) = 0.09.
    const line = { quantityThousandths: 1000, unitMinor: 33, taxMillionths: 82_500 }
    expect(totals([line, line, line], [])).toEqual({
      netMinor: 99,
      taxes: [{ name: '', rateMillionths: 82_500, netMinor: 99, taxMinor: 8 }],
      taxMinor: 8,
      totalMinor: 107,
      paidMinor: 0,
      dueMinor: 107,
    })
  })

  it('takes each line at its own rate, and refunds off what was paid', () => {
    // By hand: 2 × 120.00 at 10 % = 24.00; 1 × 50.00 at 0 %; 290.00 + 24.00 = 314.00; paid 100 + 50 − 20 = 130; due 184.00.
    const lines = [
      { quantityThousandths: 2000, unitMinor: 12000, taxMillionths: 100_000 },
      { quantityThousandths: 1000, unitMinor: 5000, taxMillionths: 0 },
    ]
    const paid = [
      { kind: 'deposit', minor: 10000 },
      { kind: 'payment', minor: 5000 },
      { kind: 'refund', minor: 2000 },
    ] as const
    expect(totals(lines, paid)).toMatchObject({
      netMinor: 29000,
      taxMinor: 2400,
      totalMinor: 31400,
      paidMinor: 13000,
      dueMinor: 18400,
    })
  })

  it('keeps hours, discounts and two taxes of one rate apart', () => {
    // By hand: 1.5 h × 95.01 = 142.515 → 142.52 at 8.25 % "Labour"; less 20.00 of it → 122.52, tax 10.1079 → 10.11.
    // 3 × 18.00 = 54.00 at 8.25 % "Parts" → 4.455 → 4.46 (a half goes up). 122.52 + 54.00 = 176.52; tax 14.57; 191.09.
    const lines = [
      { quantityThousandths: 1500, unitMinor: 9501, taxMillionths: 82_500, taxName: 'Labour' },
      { quantityThousandths: 1000, unitMinor: -2000, taxMillionths: 82_500, taxName: 'Labour' },
      { quantityThousandths: 3000, unitMinor: 1800, taxMillionths: 82_500, taxName: 'Parts' },
    ]
    expect(totals(lines, [])).toMatchObject({
      taxes: [
        { name: 'Labour', rateMillionths: 82_500, netMinor: 12252, taxMinor: 1011 },
        { name: 'Parts', rateMillionths: 82_500, netMinor: 5400, taxMinor: 446 },
      ],
      netMinor: 17652,
      taxMinor: 1457,
      totalMinor: 19109,
    })
  })

  it('rounds a half away from zero, on both sides alike', () => {
    expect([roundMinor(0.5), roundMinor(1.5), roundMinor(-0.5), roundMinor(2.49)]).toEqual([1, 2, -1, 2])
    // 0.50 × 9 % = 0.045 → 0.05; 1.00 × 0.5 % = 0.005 → 0.01; 0.99 × 0.5 % = 0.00495 → 0.00.
    expect([taxOn(50, 90_000), taxOn(-50, 90_000), taxOn(100, 5_000), taxOn(99, 5_000)]).toEqual([5, -5, 1, 0])
    // At 8.875 %: 4.00 → 0.355 → 0.36; 3.99 → 0.3541125 → 0.35; at 8.87 % both were 0.35 (0.3548, 0.353913).
    expect([taxOn(400, 88_750), taxOn(-400, 88_750), taxOn(399, 88_750)]).toEqual([36, -36, 35])
  })

  it('is the exact fraction, rounded once, also where doubles are too short', () => {
    const thousandths = fc.integer({ min: 1, max: 9_999_000 })
    const minor = fc.integer({ min: -2_000_000_000, max: 2_000_000_000 })
    fc.assert(
      fc.property(thousandths, minor, fc.integer({ min: 0, max: 999_999 }), (quantityThousandths, unitMinor, rate) => {
        expect(lineNet({ quantityThousandths, unitMinor })).toBe(halfAway(part(unitMinor, quantityThousandths, 1000)))
        expect(taxOn(unitMinor, rate)).toBe(halfAway(part(unitMinor, rate, 1_000_000)))
      }),
    )
  })

  const line = fc.record({
    quantityThousandths: fc.integer({ min: 1, max: 20_000 }),
    unitMinor: fc.integer({ min: -50_000, max: 500_000 }),
    taxMillionths: fc.integer({ min: 0, max: 250_000 }),
    taxName: fc.constantFrom('', 'Sales tax', 'Parts'),
  })

  it('does not depend on the order of the lines', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const { taxes: _, ...sums } = totals(lines, [])
        expect(totals(lines.toReversed(), [])).toMatchObject(sums)
      }),
    )
  })

  it('adds up: the lines to the net, the rates to the tax, both to the total, each rate within half a cent', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const { netMinor, taxMinor, totalMinor, taxes } = totals(lines, [])
        expect(netMinor).toBe(lines.map(lineNet).reduce((sum, net) => sum + net, 0))
        expect(taxMinor).toBe(taxes.reduce((sum, rate) => sum + rate.taxMinor, 0))
        expect(totalMinor).toBe(netMinor + taxMinor)
        for (const rate of taxes) {
          expect(Math.abs(rate.taxMinor - (rate.netMinor * rate.rateMillionths) / 1_000_000)).toBeLessThanOrEqual(0.5)
        }
      }),
    )
  })
})

describe('a tax rate', () => {
  it.each([
    [82_500, '8.25 %'],
    [100_000, '10 %'],
    [75_000, '7.5 %'],
    [500, '0.05 %'],
    [88_750, '8.875 %'],
    [99_750, '9.975 %'],
    [80_250, '8.025 %'],
    [1, '0.0001 %'],
    [999_999, '99.9999 %'],
    [0, 'none'],
  ])('%i millionths are %s', (rateMillionths, words) => {
    expect(percentOf(rateMillionths)).toBe(words)
  })

  it.each([
    ['8.25 %', 82_500],
    ['8.25%', 82_500],
    ['8,25', 82_500],
    ['8.875', 88_750],
    ['8,875', 88_750],
    ['8.875%', 88_750],
    ['8.8750', 88_750],
    ['8.0125', 80_125],
    ['10', 100_000],
    ['', 0],
  ])('%j is %i millionths', (text, rateMillionths) => {
    expect(parsePercent(text)).toEqual({ ok: true, value: rateMillionths })
  })

  it.each(['8.87501', '100', '-1', '%', 'eight', '8..2'])('refuses %j', (text) => {
    expect(parsePercent(text).ok).toBe(false)
  })

  it('reads back as itself, and says its name', () => {
    for (const rateMillionths of [0, 1, 10, 82_500, 88_750, 999_999]) {
      expect(parsePercent(taxText(rateMillionths))).toEqual({ ok: true, value: rateMillionths })
    }
    expect([taxWords('Sales tax', 82_500), taxWords('', 82_500), taxWords('Exempt', 0)]).toEqual([
      'Sales tax, 8.25 %',
      '8.25 %',
      'Exempt, 0 %',
    ])
  })
})
