import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { pricesByStep } from '@/lib/data/price-list'
import { auditChanges } from '@/lib/data/stored/records'
import { seedPrices, seedTaxes } from '@/lib/demo/prices'
import { taxText } from '@/lib/core/money/percent'
import { nothingPicked, picked, type PricePick } from '@/lib/core/money/price-pick'
import { addPriceItemSchema, type PriceItemForm } from '@/lib/schemas/price'
import { taxPercent } from '@/lib/schemas/money'
import { addPriceItem } from '@/lib/use-cases/prices/add-price-item'
import { changePriceItem } from '@/lib/use-cases/prices/change-price-item'
import { pricePicks } from '@/lib/data/price-picks'
import { retirePriceItem } from '@/lib/use-cases/back-room/retire'
import { seePriceItem, seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { seeBooking } from '@/lib/use-cases/jobs/see-booking'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { book, head } from '../jobs/counter-shop'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const form: PriceItemForm = { stepId: 'flat-cut', text: 'Flat cut', unitPrice: '95', tax: '8.25' }
const parse = (more: Partial<PriceItemForm> = {}) => addPriceItemSchema.parse({ ...form, ...more })

let shop: Staffed
let itemId: string
beforeEach(async () => {
  shop = await staffedShop()
  itemId = await add()
})
const add = async (more: Partial<PriceItemForm> = {}): Promise<string> =>
  (await addPriceItem(shop.staff.orla, parse(more), { now })).itemId
const change = (version: number, more: Partial<PriceItemForm>) =>
  changePriceItem(shop.staff.orla, { ...parse(more), itemId, version }, { now })
const retire = (version: number, retired: boolean) =>
  retirePriceItem(shop.staff.orla, { itemId, version, retired }, { now })
const look = () => shop.database.client.priceItem.findMany()
const trail = async () => {
  const entries = await shop.database.client.auditEntry.findMany({
    where: { subject: 'price-item' },
    orderBy: { seq: 'asc' },
  })
  return entries.map(({ action, seq, changes }) => ({ action, changes: auditChanges.read(changes, seq) }))
}

describe('only the owner', () => {
  const deeds = {
    'adds prices': (actor: Actor) => addPriceItem(actor, parse(), { now }),
    'changes them': (actor: Actor) =>
      changePriceItem(actor, { ...parse({ unitPrice: '1' }), itemId, version: 1 }, { now }),
    'retires them': (actor: Actor) => retirePriceItem(actor, { itemId, version: 1, retired: true }, { now }),
  }
  const cases = notOwners.flatMap((who) => Object.entries(deeds).map(([what, deed]) => ({ who, what, deed })))
  test.each(cases)('$what: $who is refused', ({ who, deed }) => expectRefused(shop.staff[who], deed, look))
})

test('counter and owner see the list; a machinist does not', async () => {
  expect((await seePriceList(shop.staff.orla)).rows).toHaveLength(1)
  expect((await seePriceList(shop.staff.tamsin)).rows).toHaveLength(1)
  for (const see of [(actor: Actor) => seePriceList(actor), (actor: Actor) => seePriceItem(actor, itemId)]) {
    await expect(see(shop.staff.dov)).rejects.toMatchObject({ refusal: { code: 'not-allowed' } })
  }
})

describe('what was typed', () => {
  test('stands in minor units and millionths, beside its step’s name', async () => {
    await add({ stepId: '', text: 'Courier', unitPrice: '12,5', tax: '' })
    // By hand: 95 → 9500 cents, 8.25 % → 82,500; 12.50 → 1250 cents, no tax.
    expect((await seePriceList(shop.staff.tamsin)).rows).toMatchObject([
      { step: 'Flat cut', text: 'Flat cut', unitMinor: 9500, taxMillionths: 82_500 },
      { step: '', text: 'Courier', unitMinor: 1250, taxMillionths: 0 },
    ])
  })

  test.each<[string, object, string]>([
    ['no words', { text: ' ' }, 'text'],
    ['a step that is none', { stepId: 'polish' }, 'stepId'],
    ['words for an amount', { unitPrice: 'cheap' }, 'unitPrice'],
    ['no amount', { unitPrice: '' }, 'unitPrice'],
    ['an amount below nothing', { unitPrice: '-5' }, 'unitPrice'],
    ['a tax of a hundred and more', { tax: '100' }, 'tax'],
  ])('%s is refused at its field', (_, more, path) => {
    const parsed = addPriceItemSchema.safeParse({ ...form, ...more })
    expect(parsed.error?.issues.map((issue) => issue.path.join('.'))).toEqual([path])
  })

  test('an amount finer than the currency is refused at its field, and nothing is kept', async () => {
    await expect(add({ unitPrice: '95.125' })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { unitPrice: expect.any(String) } },
    })
    expect(await look()).toHaveLength(1)
  })

  test.each([
    [82_500, '8.25'],
    [88_750, '8.875'],
    [100_000, '10'],
    [5_000, '0.5'],
    [0, ''],
  ])('a tax of %d millionths is typed “%s”, and read back the same', (rateMillionths, typed) => {
    expect(taxText(rateMillionths)).toBe(typed)
    expect(taxPercent.parse(typed)).toBe(rateMillionths)
  })
})

describe('a change', () => {
  test('takes the version forward, and the trail has both sides', async () => {
    await change(1, { unitPrice: '110.00', tax: '8.25' })
    expect((await seePriceItem(shop.staff.orla, itemId)).item).toMatchObject({ version: 2, unitMinor: 11000 })
    expect((await trail()).at(-1)).toEqual({
      action: 'price-item.change',
      changes: { unitMinor: { from: 9500, to: 11000 } },
    })
    const [line] = (await seeTrail(shop.staff.orla, { find: '', before: null })).lines
    expect(line).toMatchObject({ name: 'Flat cut' })
  })

  test('that comes late is a conflict, and nothing changes', async () => {
    await change(1, { unitPrice: '110.00' })
    const before = await look()
    for (const late of [change(1, { unitPrice: '90' }), retire(1, true)]) {
      await expect(late).rejects.toMatchObject({ refusal: { code: 'conflict' } })
    }
    expect(await look()).toEqual(before)
    expect((await seePriceItem(shop.staff.orla, itemId)).last).toEqual({ by: shop.staff.orla.name, at: now })
  })

  test('of one that is not there is not found', async () => {
    itemId = 'none'
    for (const deed of [change(1, {}), retire(1, true), seePriceItem(shop.staff.orla, itemId)]) {
      await expect(deed).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    }
  })
})

test('the list goes by the route, by hand after it; retired ones stand last and can be brought back', async () => {
  await add({ stepId: '', text: 'A courier' })
  await add({ stepId: 'crack', text: 'Crack check' })
  await retire(1, true)
  const list = async () => (await seePriceList(shop.staff.orla)).rows.map(({ text, retired }) => [text, retired])
  expect(await list()).toEqual([
    ['Crack check', false],
    ['A courier', false],
    ['Flat cut', true],
  ])
  await retire(2, false)
  expect((await list()).map(([text]) => text)).toEqual(['Crack check', 'Flat cut', 'A courier'])
  expect((await trail()).map(({ action }) => action)).toEqual([
    'price-item.add',
    'price-item.add',
    'price-item.add',
    'price-item.retire',
    'price-item.restore',
  ])
})

describe('prices by step', () => {
  test('several of one step add up; retired ones and those by hand are left out', async () => {
    await add({ text: 'Setting up', unitPrice: '45', tax: '' })
    await add({ stepId: 'crack', text: 'Crack check', unitPrice: '40', tax: '10' })
    await add({ stepId: '', text: 'Courier' })
    const leak = await add({ stepId: 'leak', text: 'Leak test' })
    await retirePriceItem(shop.staff.orla, { itemId: leak, version: 1, retired: true }, { now })
    // By hand: 95.00 + 45.00 = 140.00; tax 95 × 8.25 % = 7.8375 on 140 is 5.59821… %: 55,982 millionths.
    expect(await pricesByStep(shop.database.client)).toEqual({
      'flat-cut': { unitMinor: 14000, text: 'Flat cut, Setting up', taxMillionths: 55_982 },
      crack: { unitMinor: 4000, text: 'Crack check', taxMillionths: 100_000 },
    })
  })

  test('of work done for nothing are nothing', async () => {
    await add({ stepId: 'crack', text: 'Look', unitPrice: '0', tax: '' })
    await add({ stepId: 'crack', text: 'Look again', unitPrice: '0', tax: '' })
    expect(await pricesByStep(shop.database.client)).toMatchObject({
      crack: { unitMinor: 0, taxMillionths: 0 },
    })
  })
})

test('the demo’s list has a price for what its shop charges, all of it taxed as its jobs are', async () => {
  await retire(1, true)
  await seedPrices(shop.staff.orla, await seedTaxes(shop.staff.orla, now), now)
  const prices = await pricesByStep(shop.database.client)
  for (const step of ['flat-cut', 'angle-cut', 'flow', 'seat-work', 'crack', 'pressure', 'wash-in'] as const) {
    expect(prices[step]?.unitMinor).toBeGreaterThan(0)
  }
  expect(new Set(Object.values(prices).map(({ taxMillionths }) => taxMillionths))).toEqual(new Set([82_500]))
})

describe('a price line taken from the list', () => {
  const flat: PricePick = { stepId: '', id: '1', label: '', text: 'Flat cut', unitPrice: '95.00', tax: '8.25' }
  const crack: PricePick = { stepId: '', id: '2', label: '', text: 'Crack check', unitPrice: '40.00', tax: '' }
  const fieldsOf = ({ text, unitPrice, tax }: PricePick) => ({ text, unitPrice, tax })

  test('is offered what is in use, as it would be typed', async () => {
    await add({ stepId: '', text: 'Courier', unitPrice: '12.5', tax: '' })
    await retire(1, true)
    const manner = { currency: 'USD', currencyExponent: 2, locale: 'en-US' }
    expect((await pricePicks(shop.database.client, manner)).rows).toEqual([
      { id: expect.any(String), stepId: '', label: 'Courier, $12.50', text: 'Courier', unitPrice: '12.50', tax: '' },
    ])
  })

  test('stands beside the lines of a job and of a booking; a machinist sees none of it', async () => {
    const { number } = await book({ heads: [head({ castingId: '' })] }, { now }, shop.staff.tamsin)
    const texts = async (actor: Actor) => (await seeJob(actor, { number, now })).priceList.rows.map(({ text }) => text)
    expect(await texts(shop.staff.tamsin)).toEqual(['Flat cut'])
    expect(await texts(shop.staff.dov)).toEqual([])
    expect((await seeBooking(shop.staff.tamsin, { now })).priceList.rows).toMatchObject([{ unitPrice: '95.00' }])
  })

  test('fills an empty line, and another pick takes the first one’s place', () => {
    const first = picked(nothingPicked, flat, nothingPicked)
    expect(first).toEqual(fieldsOf(flat))
    expect(picked(first, crack, flat)).toEqual(fieldsOf(crack))
  })

  test('never loses what was typed', () => {
    const typed = { text: 'Flat cut, both heads', unitPrice: '', tax: '' }
    expect(picked(typed, flat, nothingPicked)).toEqual({ ...fieldsOf(flat), text: typed.text })
    expect(picked({ ...fieldsOf(flat), unitPrice: '80' }, crack, flat)).toEqual({
      ...fieldsOf(crack),
      unitPrice: '80',
    })
  })
})
