import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { addInstrumentSchema, changeShopSchema } from '@/lib/schemas/shop'
import { addInstrument } from '@/lib/use-cases/shop/add-instrument'
import { changeInstrument } from '@/lib/use-cases/shop/change-instrument'
import { changeShop } from '@/lib/use-cases/shop/change-shop'
import { seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const gauge = addInstrumentSchema.parse({
  name: 'Depth gauge 9',
  kind: 'gauge',
  lastCheckedOn: '2026-01-15',
  dueOn: '2026-03-02',
})
const facts = changeShopSchema.parse({
  version: 1,
  name: 'Quennell and Daughter',
  address: '14 Foundry Row',
  phone: '555-0142',
  locale: 'en-US',
  paper: 'a4',
})

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})
const look = async () => ({
  instruments: await shop.database.client.instrument.findMany(),
  shop: await shop.database.client.shop.findMany(),
})
const change = (instrumentId: string, version: number, more: object) =>
  changeInstrument(shop.staff.orla, { ...gauge, instrumentId, version, retired: false, ...more }, { now })

describe('only the owner', () => {
  const deeds = {
    'adds instruments': (actor: Actor) => addInstrument(actor, gauge, { now }),
    'changes the shop’s facts': (actor: Actor) => changeShop(actor, facts, { now }),
  }
  const cases = notOwners.flatMap((who) => Object.entries(deeds).map(([what, deed]) => ({ who, what, deed })))
  test.each(cases)('$what: $who is refused', ({ who, deed }) => expectRefused(shop.staff[who], deed, look))

  test.each(notOwners)('changes instruments: %s is refused', async (who) => {
    const { instrumentId } = await addInstrument(shop.staff.orla, gauge, { now })
    const retire = (actor: Actor) =>
      changeInstrument(actor, { ...gauge, instrumentId, version: 1, retired: true }, { now })
    await expectRefused(shop.staff[who], retire, look)
  })
})

describe('when a check is due', () => {
  test('an instrument is overdue from the day after, in the shop’s zone', async () => {
    await addInstrument(shop.staff.orla, gauge, { now })
    // The shop keeps Chicago's time, UTC−6 in early March: 05:59 UTC on the 3rd is still the 2nd there.
    const [onTheDay] = (await seeInstruments(shop.staff.orla, new Date('2026-03-03T05:59:00Z'))).rows
    const [theDayAfter] = (await seeInstruments(shop.staff.orla, new Date('2026-03-03T06:00:00Z'))).rows
    expect([onTheDay?.overdue, theDayAfter?.overdue]).toEqual([false, true])
  })

  test('not when it is retired', async () => {
    const { instrumentId } = await addInstrument(shop.staff.orla, gauge, { now })
    await change(instrumentId, 1, { retired: true })
    const [seen] = (await seeInstruments(shop.staff.orla, new Date('2026-06-01T12:00:00Z'))).rows
    expect(seen).toMatchObject({ overdue: false, retired: true })
  })
})

test('a stale change of an instrument, or of the shop, is a conflict', async () => {
  const { instrumentId } = await addInstrument(shop.staff.orla, gauge, { now })
  await change(instrumentId, 1, { lastCheckedOn: '2026-03-01' })
  await changeShop(shop.staff.orla, facts, { now })
  const before = await look()
  await expect(change(instrumentId, 1, { name: 'Another' })).rejects.toMatchObject({
    refusal: { code: 'conflict' },
  })
  await expect(changeShop(shop.staff.orla, { ...facts, name: 'Another' }, { now })).rejects.toMatchObject({
    refusal: { code: 'conflict' },
  })
  expect(await look()).toEqual(before)
})
