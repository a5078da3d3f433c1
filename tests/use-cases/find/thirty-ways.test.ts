import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { customerText, headText, nameInOrder } from '@/lib/core/find/texts'
import type { Provider } from '@/lib/data/gate/provider'
import { readPhone } from '@/lib/data/phone'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { databaseMs } from '@/tests/setup/database-time'
import { common, ways } from '@/tests/setup/find-ways'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { inLongRun } from '@/tests/setup/long-run'
import { withPostgres } from '@/tests/setup/postgres'
import { scansOf } from '@/tests/setup/scans'
import { statementsOf } from '@/tests/setup/statements'
import { book, casting, counter, head, monday, openShop } from '../jobs/counter-shop'

vi.setConfig({ testTimeout: 600_000, hookTimeout: 900_000 })

const count = inLongRun ? 100_000 : 2_000
/** In the database alone. */
const mostMs = 10

/** 40 × 50 names: each is borne by as many customers as there are two thousands of them. */
const first = ['Ada', 'Ben', 'Cleo', 'Dora', 'Emil', 'Finn', 'Gwen', 'Hugo', 'Ines', 'Jon'].flatMap((name) =>
  ['', 'a', 'ette', 'us'].map((end) => `${name}${end}`),
)
const last = ['Alder', 'Birch', 'Cedar', 'Dogwood', 'Elder', 'Fir', 'Gorse', 'Hazel', 'Ivy', 'Juniper'].flatMap(
  (name) => ['', 'brook', 'field', 'mere', 'worth'].map((end) => `${name}${end}`),
)

function contactOf(n: number) {
  const name = `${first[n % first.length]} ${last[Math.floor(n / first.length) % last.length]}`
  const phone = `212-555-${String(n).padStart(6, '0')}`
  const { e164, digits } = readPhone(phone, 'US')
  return {
    ...{ customerId: `c-${n}`, name, nameLower: nameInOrder(name), phone, phoneE164: e164, phoneDigits: digits },
    ...{ email: '', address: '', otherPhoneE164: '', otherPhoneDigits: '' },
  }
}

/** Customers with a job and a head each, past the use cases: a booking takes longer than all that is measured here. */
async function fill({ client }: TestDatabase): Promise<void> {
  for (let from = 0; from < count; from += 1000) {
    const numbers = Array.from({ length: 1000 }, (_, at) => from + at)
    const contacts = numbers.map(contactOf)
    await client.customer.createMany({ data: numbers.map((n) => ({ id: `c-${n}`, createdAt: monday })) })
    await client.customerContact.createMany({ data: contacts })
    await client.customerText.createMany({
      data: contacts.map((contact) => ({ customerId: contact.customerId, text: customerText([contact]) })),
    })
    await client.job.createMany({
      data: numbers.map((n) => ({
        ...{ id: `j-${n}`, number: `25-${String(n + 1).padStart(6, '0')}`, customerId: `c-${n}`, preset: 'refresh' },
        ...{ partsPlace: '', note: '', createdAt: monday, byId: counter.personId },
      })),
    })
    await client.head.createMany({
      data: numbers.map((n) => ({
        ...{ id: `h-${n}`, stamp: `S${n}`, marks: `MK-${n}`, marksLower: '', material: 'iron', castingId: casting },
        ...{ chamberForm: 'as-cast', newThicknessText: '', note: '', createdAt: monday },
      })),
    })
    await client.headText.createMany({
      data: numbers.map((n) => ({
        headId: `h-${n}`,
        text: headText({ stamp: `S${n}`, marks: `MK-${n}`, casting: 'Halden 4' }),
      })),
    })
    await client.tagAssignment.createMany({
      data: numbers.map((n) => ({
        ...{ id: `t-${n}`, headId: `h-${n}`, number: `T-${100_000 + n}`, sortNumber: 100_000 + n, from: monday },
        activeNumber: `T-${100_000 + n}`,
      })),
    })
  }
}

async function shopOn(provider: Provider) {
  const database = await testDatabase(provider)
  await openShop(database)
  await fill(database)
  await database.client.counter.create({ data: { name: 'job-26', value: 13 } })
  await database.client.counter.create({ data: { name: 'tag', value: 426 } })
  const booked = await book({
    customer: { id: '', name: 'Ann-Marie  Böhm-O’Neil', phone: '+44 20 7946 0123', email: '', address: '' },
    heads: [head({ castingId: 'c-morrow', stamp: 'QZ 77', marks: 'XK-9' })],
  })
  const { customerId } = await database.client.job.findUniqueOrThrow({ where: { number: booked.number } })
  await book({ customer: { id: '', name: 'Local', phone: '555-0139', email: '', address: '' } })
  if (provider === 'postgresql') await withPostgres(database.url, (sql) => sql.query('ANALYZE'))
  return { database, booked, customer: `/customers/${customerId}` }
}

const median = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0

describe.each(['sqlite', 'postgresql'] as const)(`%s, ${count} customers`, (provider) => {
  let shop: Awaited<ReturnType<typeof shopOn>>
  beforeAll(async () => {
    shop = await shopOn(provider)
  })
  afterAll(() => shop.database.close())

  it('books as numbered here', () => {
    expect([shop.booked.number, shop.booked.heads[0]?.tag]).toEqual(['26-0014', 'T-0427'])
    expect(ways).toHaveLength(30)
  })

  it.each(ways)('“%s” finds the %s', async (asked, what) => {
    const { hits } = await findAnything(counter, { q: asked })
    const isFound = hits.some((hit) =>
      what === 'head'
        ? hit.kind === 'head' && hit.tag === 'T-0427'
        : what === 'job'
          ? hit.kind === 'job' && hit.number === '26-0014'
          : hit.kind === 'customer' && ['Ann-Marie  Böhm-O’Neil', 'Local'].includes(hit.name),
    )
    expect(isFound).toBe(true)
    expect(hits.length).toBeLessThanOrEqual(25)
  })

  it('reads no table from end to end', async () => {
    if (provider === 'postgresql') {
      const plan = await withPostgres(shop.database.url, async (sql) => {
        // So few rows may be quicker read through: asked is whether the index can be used at all.
        await sql.query('SET enable_seqscan = off')
        const text = `"text" LIKE '%bohm%' AND "text" LIKE '% an%'`
        return (await sql.query(`EXPLAIN SELECT "customerId" FROM "CustomerText" WHERE ${text} LIMIT 1000`)).rows
      })
      expect(JSON.stringify(plan)).toContain('Bitmap Index Scan on \\"CustomerText_find\\"')
      return
    }
    for (const q of [...ways.map(([way]) => way), ...common]) {
      expect(scansOf(shop.database.url, await statementsOf(() => findAnything(counter, { q })))).toEqual([])
    }
  })

  // Times are only worth asserting where there is much to look through.
  if (!inLongRun) return
  it(`is answered each way, and the commonest words, within ${mostMs} ms`, async () => {
    const asked = [...ways.map(([way]) => way), ...common]
    const slow: string[] = []
    for (const q of asked) {
      const times: number[] = []
      for (let turn = 0; turn < 7; turn += 1) times.push(await databaseMs(provider, () => findAnything(counter, { q })))
      process.stdout.write(`${provider} ${q}: ${median(times).toFixed(1)} ms\n`)
      if (median(times) > mostMs) slow.push(`${q}: ${median(times).toFixed(1)} ms`)
    }
    expect(slow).toEqual([])
  })
})
