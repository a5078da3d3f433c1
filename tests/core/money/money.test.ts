import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatAmount, parseAmount } from '@/lib/core/money/amount'
import { percentOf } from '@/lib/core/money/percent'
import { roundMinor, totals } from '@/lib/core/money/totals'

describe('an amount as typed', () => {
  it.each([
    ['125', 2, 12500],
    ['125.5', 2, 12550],
    ['125,50', 2, 12550],
    [' 0.05 ', 2, 5],
    ['125', 0, 125],
    ['1.234', 3, 1234],
  ])('%s with %i decimals', (text, exponent, minor) => {
    expect(parseAmount(text, exponent)).toEqual({ ok: true, value: minor })
  })

  it.each([
    ['1,250', 2],
    ['12.345', 2],
    ['1.5', 0],
    ['-5', 2],
    ['', 2],
    ['five', 2],
    ['1 250.00', 2],
    ['9999999999', 2],
  ])('refuses %j with %i decimals', (text, exponent) => {
    expect(parseAmount(text, exponent)).toMatchObject({ ok: false, refusal: { code: 'unreadable' } })
  })
})

describe('an amount written again', () => {
  it('reads back as itself', () => {
    expect([formatAmount(12550, 2), formatAmount(5, 2), formatAmount(0, 2), formatAmount(125, 0)]).toEqual([
      '125.50',
      '0.05',
      '0.00',
      '125',
    ])
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), fc.integer({ min: 0, max: 3 }), (minor, exponent) => {
        expect(parseAmount(formatAmount(minor, exponent), exponent)).toEqual({ ok: true, value: minor })
      }),
    )
  })
})

describe('what a document comes to', () => {
  it('rounds tax once', () => {
    // By hand: net 3 × 0.33 = 0.99; tax 0.99 × 8.25 % = 0.081675 → 0.08. Rounded line by line: 3 × round(0.027225) = 0.09.
    const line = { quantity: 1, unitMinor: 33, taxBasisPoints: 825 }
    expect(totals([line, line, line], [])).toEqual({
      netMinor: 99,
      taxMinor: 8,
      totalMinor: 107,
      paidMinor: 0,
      dueMinor: 107,
    })
  })

  it('takes each line at its own rate, and refunds off what was paid', () => {
    // By hand: 2 × 120.00 at 10 % = 24.00; 1 × 50.00 at 0 %; 290.00 + 24.00 = 314.00; paid 100 + 50 − 20 = 130; due 184.00.
    const lines = [
      { quantity: 2, unitMinor: 12000, taxBasisPoints: 1000 },
      { quantity: 1, unitMinor: 5000, taxBasisPoints: 0 },
    ]
    const paid = [
      { kind: 'deposit', minor: 10000 },
      { kind: 'payment', minor: 5000 },
      { kind: 'refund', minor: 2000 },
    ] as const
    expect(totals(lines, paid)).toEqual({
      netMinor: 29000,
      taxMinor: 2400,
      totalMinor: 31400,
      paidMinor: 13000,
      dueMinor: 18400,
    })
  })

  it('rounds a half away from zero, on both sides alike', () => {
    expect([roundMinor(0.5), roundMinor(1.5), roundMinor(-0.5), roundMinor(2.49)]).toEqual([1, 2, -1, 2])
  })

  it('does not depend on the order of the lines', () => {
    const line = fc.record({
      quantity: fc.integer({ min: 1, max: 20 }),
      unitMinor: fc.integer({ min: 0, max: 500_000 }),
      taxBasisPoints: fc.integer({ min: 0, max: 2500 }),
    })
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        expect(totals(lines.toReversed(), [])).toEqual(totals(lines, []))
      }),
    )
  })
})

describe('a tax rate in words', () => {
  it.each([
    [825, '8.25 %'],
    [1000, '10 %'],
    [750, '7.5 %'],
    [5, '0.05 %'],
    [0, 'none'],
  ])('%i hundredths of a per cent are %s', (basisPoints, words) => {
    expect(percentOf(basisPoints)).toBe(words)
  })
})
