import { beforeAll, describe, expect, it, vi } from 'vitest'
import { addPersonSchema } from '@/lib/schemas/person'
import { addInstrumentSchema } from '@/lib/schemas/shop'
import { addTaxRateSchema } from '@/lib/schemas/tax'
import { findCastings } from '@/lib/use-cases/castings/find-castings'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { findPrices } from '@/lib/use-cases/prices/find-prices'
import { addInstrument } from '@/lib/use-cases/shop/add-instrument'
import { changeInstrument } from '@/lib/use-cases/shop/change-instrument'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { addTaxRate } from '@/lib/use-cases/taxes/add-tax-rate'
import { findVendors } from '@/lib/use-cases/vendors/find-vendors'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { fillLists } from '@/tests/setup/filled-lists'
import { at, counter, monday, openShop, owner } from '../jobs/counter-shop'

vi.setConfig({ hookTimeout: 120_000 })

let database: TestDatabase
const names = (rows: readonly { readonly name: string }[]) => rows.map(({ name }) => name)
const now = monday

beforeAll(async () => {
  database = await testDatabase()
  await openShop(database)
  await fillLists(database, 620, monday)
})

describe('what is picked from a long list', () => {
  it('begins with the first hundred by name and says that there are more', async () => {
    const { castings, priceList } = await seeBooking(counter, { now })
    expect([castings.rows.length, castings.more]).toEqual([100, true])
    expect([priceList.rows.length, priceList.more]).toEqual([300, true])
    const { vendors } = await seeOrdering(counter, { job: null, now })
    expect([vendors.rows.length, vendors.more]).toEqual([100, true])
  })

  it('is found by part of its name, and by each word of it', async () => {
    expect(names(await findCastings(counter, { q: 'NAME 61' }))).toContain('Name 611')
    expect(names(await findVendors(counter, { q: '611 name' }))).toEqual(['Name 611'])
    expect((await findPrices(counter, { q: '611' })).map(({ text }) => text)).toEqual(['Name 611'])
  })

  it('is not found when it is retired', async () => {
    expect(await findCastings(counter, { q: 'name 610' })).toEqual([])
    expect(await findVendors(counter, { q: 'name 610' })).toEqual([])
    expect(await findPrices(counter, { q: 'name 610' })).toEqual([])
  })

  it('stands on the cut bench when the address names it', async () => {
    const { castings, casting } = await seeBench(counter, 'x-611')
    expect(casting?.name).toBe('Name 611')
    expect(castings.rows.map(({ id }) => id)).toContain('x-611')
  })
})

describe('what is picked from a whole list', () => {
  const full = expect.objectContaining({
    message: expect.stringMatching(/^\d+ \w+ are in use already. Retire one first.$/),
  })

  it('is not added beyond its end, nor put back', async () => {
    const person = { name: 'One More', signIn: 'one-more', roles: ['counter'], grants: [], password: '' }
    await expect(addPerson(owner, addPersonSchema.parse(person), at(now))).rejects.toEqual(full)
    const retired = { personId: 'x-010', version: 1, retired: false }
    await expect(retirePerson(owner, retired, at(now))).rejects.toEqual(full)
    const facts = { name: 'Gauge', kind: 'gauge', lastCheckedOn: '', dueOn: '' } as const
    await expect(addInstrument(owner, addInstrumentSchema.parse(facts), at(now))).rejects.toEqual(full)
    const gauge = { ...addInstrumentSchema.parse(facts), instrumentId: 'x-010', version: 1, retired: false }
    await expect(changeInstrument(owner, gauge, at(now))).rejects.toEqual(full)
  })

  it('is added up to its end', async () => {
    const add = (n: number) =>
      addTaxRate(owner, addTaxRateSchema.parse({ name: `County ${n}`, rate: '1', isDefault: false }), at(now))
    for (let n = 0; n < 50; n += 1) await add(n)
    await expect(add(50)).rejects.toEqual(full)
  })
})
