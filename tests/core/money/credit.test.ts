import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { creditLeft, creditOf, type CreditedLine } from '@/lib/core/money/credit'
import { lineNet, totals, type PricedLine } from '@/lib/core/money/totals'

const line = (unitMinor: number, taxMillionths: number, taxName = ''): PricedLine => ({
  quantityThousandths: 1000,
  unitMinor,
  taxMillionths,
  taxName,
})

describe('a credit note', () => {
  it('takes back part of a line with its tax', () => {
    // By hand: 40.00 of 100.00 at 8.25 % → 40.00 + 3.30 = 43.30.
    const credit = creditOf([line(10_000, 82_500)], [], [{ line: 0, netMinor: 4000 }])
    expect(credit).toMatchObject({ ok: true, value: { netMinor: 4000, taxMinor: 330, totalMinor: 4330 } })
  })

  it('returns the very tax of the invoice, in however many pieces', () => {
    // 1.00 at 8.25 % → 0.0825 → 0.08. Three notes of 0.33, 0.33, 0.34: 0.02723 → 0.03; 0.05445 → 0.05, less 0.03 = 0.02;
    // 0.0825 → 0.08, less 0.05 = 0.03. Together 0.08. Each by itself would have been 0.03 + 0.03 + 0.03 = 0.09.
    const invoice = [line(100, 82_500)]
    const before: CreditedLine[] = []
    const taxes = [33, 33, 34].map((netMinor) => {
      const credit = creditOf(invoice, before, [{ line: 0, netMinor }])
      before.push({ line: 0, netMinor })
      return credit.ok ? credit.value.taxes : null
    })
    const at = { name: '', rateMillionths: 82_500 }
    expect(taxes).toEqual([
      [{ ...at, netMinor: 33, taxMinor: 3 }],
      [{ ...at, netMinor: 33, taxMinor: 2 }],
      [{ ...at, netMinor: 34, taxMinor: 3 }],
    ])
  })

  it('takes a discount into account', () => {
    // 100.00 less 20.00, both at 10 %: the invoice is 88.00. All of it: 100.00 − 20.00 = 80.00 and 8.00 tax.
    const invoice = [line(10_000, 100_000), line(-2000, 100_000)]
    const whole = [
      { line: 0, netMinor: 10_000 },
      { line: 1, netMinor: -2000 },
    ]
    expect(creditOf(invoice, [], whole)).toMatchObject({ ok: true, value: { totalMinor: 8800 } })
    // The line without its discount would be more than the invoice.
    expect(creditOf(invoice, [], whole.slice(0, 1))).toMatchObject({ ok: false })
    // The discount alone would make the note less than nothing.
    expect(creditOf(invoice, [], whole.slice(1))).toMatchObject({ ok: false })
  })

  it('stays within each rate, and within the whole', () => {
    // 100.00 less 50.00 at 10 %, and 100.00 without tax: 155.00. The first line alone is 110.00, of a rate that has 55.00.
    const first = [{ line: 0, netMinor: 10_000 }]
    expect(creditOf([line(10_000, 100_000), line(-5000, 100_000), line(10_000, 0)], [], first).ok).toBe(false)
    // 100.00 at 10 % and a discount of 20.00 without tax: 90.00. The first line is its whole rate, and more than the invoice.
    expect(creditOf([line(10_000, 100_000), line(-2000, 0)], [], first).ok).toBe(false)
    expect(creditOf([line(10_000, 100_000), line(2000, 0)], [], first).ok).toBe(true)
  })

  it('is refused for more than a line has left, for nothing, for what is no line, and for the other sign', () => {
    const invoice = [line(10_000, 82_500), line(5000, 0)]
    const before = [{ line: 0, netMinor: 6000 }]
    expect(creditLeft(invoice, before)).toEqual([4000, 5000])
    const refused = (asked: CreditedLine[]) => {
      const credit = creditOf(invoice, before, asked)
      return credit.ok ? null : (credit.refusal.fields ?? credit.refusal.code)
    }
    expect(refused([{ line: 0, netMinor: 4001 }])).toEqual({ 'amounts.0': expect.stringMatching(/more than is left/) })
    expect(refused([{ line: 1, netMinor: -1 }])).toHaveProperty(['amounts.1'])
    expect(refused([{ line: 7, netMinor: 1 }])).toHaveProperty(['amounts.7'])
    expect(refused([])).toBe('invalid')
    expect(refused([{ line: 1, netMinor: 0 }])).toBe('invalid')
    expect(refused([{ line: 0, netMinor: 4000 }])).toBeNull()
  })

  const lines = fc.array(
    fc.record({
      quantityThousandths: fc.integer({ min: 1, max: 5000 }),
      unitMinor: fc.oneof(fc.integer({ min: 1, max: 50_000 }), fc.integer({ min: -3000, max: -1 })),
      taxMillionths: fc.constantFrom(0, 50_000, 82_500, 88_750, 200_000),
      taxName: fc.constantFrom('', 'Parts'),
    }),
    { minLength: 1, maxLength: 6 },
  )
  const tries = fc.array(fc.tuple(fc.nat(5), fc.integer({ min: -60_000, max: 200_000 })), { maxLength: 25 })

  it('never comes to more than its invoice, whatever is tried; and never below nothing', () => {
    fc.assert(
      fc.property(lines, tries, (invoice, asked) => {
        const most = totals(invoice, [])
        const before: CreditedLine[] = []
        let [credited, tax] = [0, 0]
        for (const [at, netMinor] of asked) {
          const credit = creditOf(invoice, before, [{ line: at, netMinor }])
          if (!credit.ok) continue
          before.push(...credit.value.lines)
          credited += credit.value.totalMinor
          tax += credit.value.taxMinor
          expect(credit.value.totalMinor).toBeGreaterThan(0)
          expect(credited).toBeLessThanOrEqual(most.totalMinor)
        }
        expect(tax).toBe(credited - before.reduce((sum, { netMinor }) => sum + netMinor, 0))
      }),
    )
  })

  it('for all that is left ends an invoice at nothing, after any notes before it', () => {
    const positive = lines.filter((invoice) => invoice.every(({ unitMinor }) => unitMinor > 0))
    fc.assert(
      fc.property(positive, tries, (invoice, asked) => {
        const before: CreditedLine[] = []
        let credited = 0
        for (const [at, netMinor] of asked) {
          const credit = creditOf(invoice, before, [{ line: at, netMinor }])
          if (!credit.ok) continue
          before.push({ line: at, netMinor })
          credited += credit.value.totalMinor
        }
        const rest = creditLeft(invoice, before).map((netMinor, at) => ({ line: at, netMinor }))
        const last = creditOf(invoice, before, rest)
        const total = credited + (last.ok ? last.value.totalMinor : 0)
        expect(total).toBe(totals(invoice, []).totalMinor)
        expect(invoice.map(lineNet).every((net) => net >= 0)).toBe(true)
      }),
    )
  })
})
