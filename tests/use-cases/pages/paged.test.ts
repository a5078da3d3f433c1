import { beforeAll, describe, expect, it, vi } from 'vitest'
import { seeCastings } from '@/lib/use-cases/castings/see-castings'
import { seeAway } from '@/lib/use-cases/outside/see-away'
import { seePeople } from '@/lib/use-cases/people/see-people'
import { seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { seeVendors } from '@/lib/use-cases/vendors/see-vendors'
import { defaultShopSettings } from '@/lib/core/shop/settings'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { fillLists } from '@/tests/setup/filled-lists'
import { book, monday, openShop, owner } from '../jobs/counter-shop'

vi.setConfig({ hookTimeout: 120_000 })

let database: TestDatabase

const numbers = Array.from({ length: 230 }, (_, place) => String(place).padStart(3, '0'))
async function fill(shop: TestDatabase): Promise<void> {
  const { client } = shop
  const { heads } = await book()
  const visitId = heads[0]?.visitId ?? ''
  await fillLists(shop, numbers.length, monday)
  await client.partsWait.createMany({
    data: numbers.map((n) => ({
      ...{ id: `x-${n}`, visitId, stepId: 'final', occurrence: '', what: `part ${n}`, fromWhom: '' },
      ...{ openedAt: new Date(monday.getTime() + Number(n)), openedById: owner.personId },
    })),
  })
  const mould = await client.visit.findUniqueOrThrow({ where: { id: visitId } })
  const { castingId: _none, ...head } = await client.head.findUniqueOrThrow({ where: { id: mould.headId } })
  await client.head.createMany({ data: numbers.map((n) => ({ ...head, id: `x-${n}` })) })
  await client.visit.createMany({ data: numbers.map((n) => ({ ...mould, id: `x-${n}`, headId: `x-${n}` })) })
  await client.visitPlace.createMany({
    data: numbers.map((n) => ({ visitId: `x-${n}`, whereabouts: 'on order', changedAt: monday })),
  })
  await client.settings.createMany({
    data: numbers.slice(0, 60).map((n) => ({
      ...{ version: Number(n) + 1, createdAt: monday, byId: owner.personId, reason: `change ${n}` },
      values: JSON.stringify({ shape: 1, ...defaultShopSettings, ccToleranceCc: (Number(n) + 1) / 100 }),
    })),
  })
}

beforeAll(async () => {
  database = await testDatabase()
  await openShop(database)
  await fill(database)
})

type Page = { readonly rows: readonly { readonly id: string; readonly retired?: boolean }[]; readonly more: boolean }

/** All pages, one after the other, until none follows. */
async function pagesOf(see: (page: number) => Promise<Page>): Promise<readonly Page['rows'][]> {
  const pages: Page['rows'][] = []
  for (;;) {
    const { rows, more } = await see(pages.length + 1)
    pages.push(rows)
    if (!more) return pages
    if (pages.length > 9) throw new Error('The pages do not end.')
  }
}

const ids = (list: readonly string[]) => list.map((id) => ({ id }))

const lists = {
  people: (page: number) => seePeople(owner, page),
  castings: (page: number) => seeCastings(owner, page),
  vendors: (page: number) => seeVendors(owner, page),
  prices: (page: number) => seePriceList(owner, page),
  instruments: (page: number) => seeInstruments(owner, monday, page),
} as const

describe('a long list', () => {
  it.each(Object.entries(lists))('%s: a hundred to a page, each once, the retired last', async (_, see) => {
    const pages = await pagesOf(see)
    expect(pages.map((rows) => rows.length).slice(0, 2)).toEqual([100, 100])
    const all = pages.flat()
    expect(numbers.every((n) => all.some(({ id }) => id === `x-${n}`))).toBe(true)
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
    const firstRetired = all.findIndex(({ retired }) => retired)
    expect(all.slice(firstRetired).every(({ retired }) => retired)).toBe(true)
    expect(all.length - firstRetired).toBe(23)
  })

  it.each([
    [
      'parts waited for',
      async (page: number) => (await seeAway(owner, monday, page)).parts.map(({ waitId }) => waitId),
    ],
    [
      'heads to order',
      async (page: number) => (await seeAway(owner, monday, page)).toOrder.map(({ visitId }) => visitId),
    ],
    [
      'parts to order',
      async (page: number) =>
        (await seeOrdering(owner, { job: null, now: monday, page })).parts.map(({ waitId }) => waitId),
    ],
  ])('Away, %s: two hundred to a page, each once', async (_, see) => {
    const pages = await pagesOf(async (page) => ({
      rows: ids(await see(page)),
      more: (await seeAway(owner, monday, page)).more,
    }))
    expect(pages.map((rows) => rows.length)).toEqual([200, 30])
    expect(new Set(pages.flat().map(({ id }) => id))).toEqual(new Set(numbers.map((n) => `x-${n}`)))
  })

  it('versions of the limits: each against the one before, over the pages too', async () => {
    const pages = await pagesOf(async (page) => {
      const { history, more } = await seeSettings(owner, page)
      return { rows: history.map(({ version, changes }) => ({ id: `${version}: ${changes.join()}` })), more }
    })
    expect(pages.map((rows) => rows.length)).toEqual([25, 25, 10])
    const told = pages.flat().map(({ id }) => id)
    // Newest first; version 50 is 0.50 cc as every shop starts with, and is a change from version 49 all the same.
    expect(told[0]).toMatch(/^60: .*from 0\.59.* to 0\.6/)
    expect(told[24]).toMatch(/^36: .*from 0\.35.* to 0\.36/)
    expect(told[25]).toMatch(/^35: .*from 0\.34.* to 0\.35/)
    expect(told.at(-1)).toMatch(/^1: .*from 0\.5.* to 0\.01/)
  })

  it('heads behind the rules: a hundred to a page, each once', async () => {
    const pages = await pagesOf(async (page) => {
      const { heads, more } = await seeRulesPreview(owner, page)
      return { rows: ids(heads.map(({ visitId }) => visitId)), more }
    })
    expect(pages.map((rows) => rows.length).slice(0, 2)).toEqual([100, 100])
    const all = pages.flat().map(({ id }) => id)
    expect(new Set(all).size).toBe(all.length)
    expect(numbers.every((n) => all.includes(`x-${n}`))).toBe(true)
  })
})
