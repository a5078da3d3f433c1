import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobTotals } from '@/lib/core/money/account'
import { balanceOf } from '@/lib/core/money/balance'
import { checkPayment, checkVoid } from '@/lib/core/money/payment'
import { paidOf, type Paid } from '@/lib/core/money/totals'

const fieldsOf = (result: ReturnType<typeof checkPayment>) =>
  result.ok ? 'ok' : Object.keys(result.refusal.fields ?? {}).join()

describe('a payment', () => {
  const standing = { totalMinor: 31_400, paid: [{ kind: 'deposit', minor: 10_000 }] as const }

  it.each([
    ['payment', 21_400, false, 'ok'],
    ['payment', 21_401, false, 'confirmed'],
    ['payment', 21_401, true, 'ok'],
    ['deposit', 21_401, false, 'confirmed'],
    ['refund', 10_000, false, 'ok'],
    ['refund', 10_001, false, 'amount'],
    ['refund', 10_001, true, 'amount'],
    ['payment', 0, false, 'amount'],
    ['payment', -5, true, 'amount'],
  ] as const)('%s of %i on 314.00 with 100.00 paid, meant: %s → %s', (kind, minor, confirmed, expected) => {
    expect(fieldsOf(checkPayment(standing, { kind, minor }, confirmed))).toBe(expected)
  })

  it('a deposit before there are prices is not asked about', () => {
    expect(checkPayment({ totalMinor: 0, paid: [] }, { kind: 'deposit', minor: 5000 }, false).ok).toBe(true)
    expect(checkPayment({ totalMinor: 0, paid: [] }, { kind: 'payment', minor: 5000 }, false).ok).toBe(false)
  })

  it('is not voided while what was paid back came out of it', () => {
    expect(checkVoid([{ kind: 'refund', minor: 5000 }]).ok).toBe(false)
    expect(
      checkVoid([
        { kind: 'payment', minor: 5000 },
        { kind: 'refund', minor: 5000 },
      ]).ok,
    ).toBe(true)
  })

  it('whatever is taken, paid back and voided: never more is paid back than was paid', () => {
    const deed = fc.record({
      kind: fc.constantFrom('deposit' as const, 'payment' as const, 'refund' as const),
      minor: fc.integer({ min: -100, max: 30_000 }),
      voids: fc.boolean(),
      at: fc.nat(20),
    })
    fc.assert(
      fc.property(fc.nat(50_000), fc.array(deed, { maxLength: 30 }), (totalMinor, deeds) => {
        let paid: Paid[] = []
        for (const { kind, minor, voids, at } of deeds) {
          const others = paid.filter((_, place) => place !== at)
          if (voids && checkVoid(others).ok) paid = others
          else if (checkPayment({ totalMinor, paid }, { kind, minor }, true).ok) paid.push({ kind, minor })
          expect(paidOf(paid)).toBeGreaterThanOrEqual(0)
        }
      }),
    )
  })
})

describe('how a job stands', () => {
  it('is said by one value', () => {
    const codes = (totalMinor: number, dueMinor: number) => balanceOf({ totalMinor, dueMinor })
    expect(codes(31_400, 18_400)).toEqual({ code: 'to-pay', minor: 18_400 })
    expect(codes(31_400, -600)).toEqual({ code: 'to-refund', minor: 600 })
    expect(codes(31_400, 0)).toEqual({ code: 'paid', minor: 0 })
    expect(codes(0, 0)).toEqual({ code: 'nothing', minor: 0 })
  })

  it('adds invoices, credit notes and lines that wait, each rounded on its own', () => {
    // Invoice 0.99 + 0.08; a credit note of 0.33 + 0.03; two lines of 0.33 at 8.25 % wait: 0.66 + 0.054 → 0.05.
    // 0.99 − 0.33 + 0.66 = 1.32; 0.08 − 0.03 + 0.05 = 0.10; 1.42 in all, 1.00 paid, 0.42 to pay.
    const rate = { name: '', rateMillionths: 82_500 }
    const waiting = { quantityThousandths: 1000, unitMinor: 33, taxMillionths: 82_500 }
    const papers = [
      { kind: 'invoice', netMinor: 99, taxMinor: 8, taxes: [{ ...rate, netMinor: 99, taxMinor: 8 }] },
      { kind: 'credit-note', netMinor: 33, taxMinor: 3, taxes: [{ ...rate, netMinor: 33, taxMinor: 3 }] },
    ] as const
    expect(jobTotals([waiting, waiting], papers, [{ kind: 'payment', minor: 100 }])).toEqual({
      netMinor: 132,
      taxes: [{ ...rate, netMinor: 132, taxMinor: 10 }],
      taxMinor: 10,
      totalMinor: 142,
      paidMinor: 100,
      dueMinor: 42,
    })
  })
})
