import { describe, expect, it } from 'vitest'
import { typedTotal, type NamedTax } from '@/lib/core/money/typed-total'

const manner = { currencyExponent: 2, locale: 'en-US' }
const taxes: NamedTax[] = [
  { value: 'rate:state', taxName: 'State tax', taxMillionths: 82_500 },
  { value: 'rate:none', taxName: 'Exempt', taxMillionths: 0 },
]
const line = (quantity: string, unitPrice: string, tax: string) => ({ text: 'work', quantity, unitPrice, tax })

describe('the total of a form while it is typed', () => {
  it('adds lines at their own taxes and takes the deposit off', () => {
    // 2 · 95.50 = 191.00, of it 8.25 % = 15.7575 → 15.76; 1.5 · 80 = 120.00 without tax; 191 + 120 + 15.76 = 326.76.
    const { totals, unread } = typedTotal(
      [line('2', '$95.50', 'rate:state'), line('1.5 h', '80', '')],
      '100.00',
      taxes,
      manner,
    )
    expect(unread).toBe(0)
    expect(totals).toMatchObject({ netMinor: 31_100, taxMinor: 1_576, totalMinor: 32_676, paidMinor: 10_000 })
    expect(totals.dueMinor).toBe(22_676)
    expect(totals.taxes).toEqual([{ name: 'State tax', rateMillionths: 82_500, netMinor: 19_100, taxMinor: 1_576 }])
  })

  it('takes a percentage where the shop has named no tax', () => {
    // 10.00 at 6 % = 0.60
    expect(typedTotal([line('1', '10', '6')], '', [], manner).totals.totalMinor).toBe(1_060)
  })

  it.each([
    ['no quantity', line('', '10', '')],
    ['no amount', line('1', '', '')],
    ['a tax that is no figure', line('1', '10', 'much')],
    ['a rate that is not in use', line('1', '10', 'rate:gone')],
  ])('leaves a line with %s out and says so', (_, unreadable) => {
    const { totals, unread } = typedTotal([unreadable, line('1', '7', '')], 'soon', taxes, manner)
    expect([totals.totalMinor, totals.paidMinor, unread]).toEqual([700, 0, 1])
  })

  it('is nothing for nothing', () => {
    expect(typedTotal([], '', taxes, manner)).toMatchObject({ unread: 0, totals: { totalMinor: 0, dueMinor: 0 } })
  })
})
