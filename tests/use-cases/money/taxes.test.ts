import { describe, expect, it } from 'vitest'
import { rateField } from '@/lib/core/money/tax-choice'
import { addPriceLineSchema } from '@/lib/schemas/job'
import { addPriceItemSchema } from '@/lib/schemas/price'
import { addTaxRateSchema, changeTaxRateSchema } from '@/lib/schemas/tax'
import { retireTaxRate } from '@/lib/use-cases/back-room/retire'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { addPriceItem } from '@/lib/use-cases/prices/add-price-item'
import { seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { addTaxRate } from '@/lib/use-cases/taxes/add-tax-rate'
import { changeTaxRate } from '@/lib/use-cases/taxes/change-tax-rate'
import { seeTaxPicks, seeTaxRates } from '@/lib/use-cases/taxes/see-tax-rates'
import { testDatabase } from '@/tests/setup/database'
import { at, counter, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { account, bookPriced, discount } from './account-shop'

const add = (name: string, rate: string, isDefault = false) =>
  addTaxRate(owner, addTaxRateSchema.parse({ name, rate, isDefault }), at(monday))
const line = (jobId: string, tax: string) =>
  addPriceLineSchema.parse({ jobId, text: 'Wash', quantity: '1', unitPrice: '100', tax })

describe('taxes by name', () => {
  it('are picked by a line, which keeps name and rate; one is what new lines start with', async () => {
    await openShop(await testDatabase())
    const { rateId } = await add('Sales tax', '8.25 %', true)
    const other = await add('Parts', '5', true)
    expect((await seeTaxPicks(counter)).map(({ label, isDefault }) => [label, isDefault])).toEqual([
      ['Parts, 5 %', true],
      ['Sales tax, 8.25 %', false],
    ])
    const { jobId } = await bookPriced({ prices: [] })
    await addPriceLine(counter, line(jobId, rateField(rateId)), at(monday))
    const change = { rateId, version: 1, name: 'Sales tax', rate: '9', isDefault: false }
    await changeTaxRate(owner, changeTaxRateSchema.parse(change), at(monday))
    await addPriceLine(counter, line(jobId, rateField(rateId)), at(monday))
    expect((await account(jobId)).taxes).toMatchObject([
      { name: 'Sales tax', rateMillionths: 82_500, taxMinor: 825 },
      { name: 'Sales tax', rateMillionths: 90_000, taxMinor: 900 },
    ])
    const { account: seen } = await seeJob(counter, { number: '26-0001', now: monday })
    // The older line's rate is none of today's: its form has the percentage.
    expect(seen?.prices.map(({ typed }) => typed.tax)).toEqual(['8.25', rateField(rateId)])
    await retireTaxRate(owner, { rateId: other.rateId, version: 1, retired: true }, at(monday))
    const refused = await refusalOf(addPriceLine(counter, line(jobId, rateField(other.rateId)), at(monday)))
    expect(refused.fields).toHaveProperty('tax')
    expect((await seeTaxRates(owner)).rows.map(({ name, retired }) => [name, retired])).toEqual([
      ['Sales tax', false],
      ['Parts', true],
    ])
  })

  it('have three decimals where the county has them, typed with a point or a comma', async () => {
    await openShop(await testDatabase())
    const { rateId } = await add('County tax', '8.875%')
    await add('State tax', '8,875')
    expect((await seeTaxPicks(counter)).map(({ label }) => label)).toEqual([
      'County tax, 8.875 %',
      'State tax, 8.875 %',
    ])
    const { jobId } = await bookPriced({ prices: [] })
    for (const tax of [rateField(rateId), '8.875 %', '8.87']) await addPriceLine(counter, line(jobId, tax), at(monday))
    // By hand: 100.00 × 8.875 % = 8.875 → 8.88; 100.00 × 8.87 % = 8.87.
    expect((await account(jobId)).taxes).toEqual([
      { name: 'County tax', rateMillionths: 88_750, netMinor: 10_000, taxMinor: 888 },
      { name: '', rateMillionths: 88_750, netMinor: 10_000, taxMinor: 888 },
      { name: '', rateMillionths: 88_700, netMinor: 10_000, taxMinor: 887 },
    ])
    const { account: seen } = await seeJob(counter, { number: '26-0001', now: monday })
    expect(seen?.prices.map(({ typed }) => typed.tax)).toEqual([rateField(rateId), '8.875', '8.87'])
  })

  it('are never below zero: a discount is taken off lines of its own tax', async () => {
    await openShop(await testDatabase())
    const { jobId } = await bookPriced({ prices: [] })
    const { id } = await addPriceLine(counter, line(jobId, '10'), at(monday))
    await addPriceLine(counter, line(jobId, ''), at(monday))
    // 100.00 at 10 % and 100.00 without tax: 100.01 off at 10 % leaves −0.01 there, 50.00 off at 8 % is a tax of −4.00.
    for (const [amount, tax] of [
      ['100.01', '10'],
      ['50', '8'],
    ] as const) {
      expect((await refusalOf(discount(jobId, amount, tax))).fields).toHaveProperty('tax')
    }
    await discount(jobId, '100', '10')
    await discount(jobId, '60', '')
    // Nothing is left at 10 %, and 40.00 without tax. Without the line that is taxed its discount would stand alone.
    expect((await account(jobId)).totalMinor).toBe(4000)
    await addPriceLine(counter, line(jobId, ''), at(monday))
    const refused = await refusalOf(endPriceLine(counter, { jobId, lineId: id, why: 'not done' }, at(monday)))
    expect(refused.message).toMatch(/more than the lines at this tax/)
    expect((await account(jobId)).totalMinor).toBe(14_000)
  })

  it('have each their own name', async () => {
    await openShop(await testDatabase())
    await add('Sales tax', '8.25')
    expect((await refusalOf(add('Sales tax', '5'))).fields).toHaveProperty('name')
  })

  it('carry the price list along when their rate changes', async () => {
    await openShop(await testDatabase())
    const { rateId } = await add('Sales tax', '8.25')
    const item = { stepId: '', text: 'Gaskets', unitPrice: '$1,018.00', tax: rateField(rateId) }
    await addPriceItem(owner, addPriceItemSchema.parse(item), at(monday))
    const list = async () => (await seePriceList(counter)).rows[0]
    expect(await list()).toMatchObject({ unitMinor: 101_800, taxName: 'Sales tax', taxMillionths: 82_500 })
    const change = { rateId, version: 1, name: 'Sales tax', rate: '9', isDefault: false }
    await changeTaxRate(owner, changeTaxRateSchema.parse(change), at(monday))
    expect(await list()).toMatchObject({ taxMillionths: 90_000, tax: rateField(rateId) })
  })
})
