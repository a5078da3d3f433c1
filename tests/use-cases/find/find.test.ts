import { describe, expect, it } from 'vitest'
import { migrate } from '@/lib/cli/migrate'
import { closeClient } from '@/lib/data/client'
import { changeCastingSchema } from '@/lib/schemas/casting'
import { changeCasting } from '@/lib/use-cases/castings/change-casting'
import { changeCustomer } from '@/lib/use-cases/customers/change-customer'
import { findCustomers } from '@/lib/use-cases/customers/find-customers'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { findHeads } from '@/lib/use-cases/find/find-heads'
import { testDatabase } from '@/tests/setup/database'
import { plainSqlite } from '@/tests/setup/plain-sqlite'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

/** Two jobs of two customers: 26-0001 with T-0401 and T-0402, 26-0002 with BLUE-7. */
async function twoJobs() {
  const database = await testDatabase()
  await openShop(database)
  const first = await book({ heads: [head({ stamp: 'TR 1', marks: 'HX-2291' }), head({ stamp: 'TR 2' })] })
  const contact = { id: '', email: '', address: '' }
  const second = await book({
    customer: { ...contact, name: 'Ansel Brook', phone: '+44 20 7946 0123' },
    heads: [head({ tag: 'blue-7', marks: 'hx-2305' })],
  })
  return { client: database.client, url: database.url, first, second }
}

const find = (q: string) => findAnything(machinist, { q })
const jobs = async (q: string) => (await find(q)).hits.flatMap((hit) => (hit.kind === 'job' ? [hit.number] : []))
const tags = async (q: string) => (await find(q)).hits.flatMap((hit) => (hit.kind === 'head' ? [hit.tag] : []))

describe('the one box', () => {
  it.each(['T-0402', 't-402', '402', 'http://127.0.0.1:3000/t/T-0402', 'https://heads.example/t/T-0402'])(
    'goes straight to the head of %s',
    async (q) => {
      const { first } = await twoJobs()
      const { jump, headId } = await find(q)
      expect(jump).toBe(`/heads/${first.heads[1]?.headId}`)
      expect(headId).toBe(first.heads[1]?.headId)
    },
  )

  it('goes straight to a job', async () => {
    await twoJobs()
    expect(await find('26-0002')).toMatchObject({ jump: '/jobs/26-0002', headId: null })
    expect((await find('26-00')).jump).toBeNull()
    expect(await jobs('26-00')).toEqual(['26-0002', '26-0001'])
  })

  it('finds jobs by any part of the customer’s name', async () => {
    await twoJobs()
    expect(await jobs('tams')).toEqual(['26-0001'])
    expect(await jobs('Brook')).toEqual(['26-0002'])
    expect(await jobs('nobody at all')).toEqual([])
    // A name that begins so does not hide one that has it later.
    await book({ customer: { id: '', name: 'Brookmere Farm', phone: '', email: '', address: '' } })
    expect(await jobs('brook')).toEqual(['26-0003', '26-0002'])
  })

  it('finds jobs by phone, however it is written', async () => {
    await twoJobs()
    expect(await jobs('555-010 44')).toEqual(['26-0001'])
    expect(await jobs('(555) 010-4477')).toEqual(['26-0001'])
    expect(await jobs('0123')).toEqual(['26-0002'])
  })

  it('finds heads by own stamp and by casting marks', async () => {
    await twoJobs()
    expect(await tags('tr 2')).toEqual(['T-0402'])
    expect(await tags('HX-2291')).toEqual(['T-0401'])
    expect((await tags('hx-2')).sort()).toEqual(['BLUE-7', 'T-0401'])
  })

  it('finds the head that wore a tag before, and jumps to the one that wears it now', async () => {
    const { client, first, second } = await twoJobs()
    const old = first.heads[0]?.headId ?? ''
    await client.tagAssignment.updateMany({
      where: { headId: old },
      data: { activeNumber: null, to: monday },
    })
    expect((await find('T-0401')).jump).toBe(`/heads/${old}`)
    await client.tagAssignment.create({
      data: {
        id: 'again',
        headId: second.heads[0]?.headId ?? '',
        number: 'T-0401',
        sortNumber: 401,
        activeNumber: 'T-0401',
        from: new Date(monday.getTime() + 1000),
      },
    })
    const found = await find('T-0401')
    expect(found.jump).toBe(`/heads/${second.heads[0]?.headId}`)
    expect(found.hits.map((hit) => hit.href)).toContain(`/heads/${old}`)
  })

  it('finds nothing for nothing, and carries no price', async () => {
    await twoJobs()
    expect(await find('  ')).toEqual({ jump: null, headId: null, hits: [], locale: 'en-US' })
    expect(JSON.stringify(await find('tams'))).not.toMatch(/minor|price/i)
  })
})

describe('what is kept to find by', () => {
  /** FTS5's own comparison of its index with the texts it is over: an error when they differ. */
  const isInStep = (url: string, table: 'CustomerText' | 'HeadText') =>
    plainSqlite(url, (file) => {
      try {
        file.exec(`INSERT INTO "${table}_find"("${table}_find", rank) VALUES ('integrity-check', 1)`)
        return true
      } catch {
        return false
      }
    })

  it('is in step with its index after every change, and one that is not is seen', async () => {
    const { client, url } = await twoJobs()
    const { customerId } = await client.customerContact.findFirstOrThrow({ where: { name: 'Ansel Brook' } })
    const change = {
      customerId,
      version: 1,
      name: 'Ansel Reed',
      phone: '',
      otherPhone: '',
      email: '',
      address: '',
      note: '',
    }
    await changeCustomer(counter, change, at(monday))
    const nine = {
      name: 'Halden Nine',
      material: 'iron',
      chamberCount: '4',
      chamberShape: 'closed',
      deepEdge: 'exhaust',
    }
    const none = { note: '', figures: { any: {}, 'as-cast': {}, machined: {}, opened: {} }, bolts: [], variants: [] }
    const casting = changeCastingSchema.parse({ ...nine, ...none, castingId: 'c-halden', version: 1 })
    await changeCasting(owner, casting, at(monday))
    expect(await jobs('reed')).toEqual(['26-0002'])
    expect(await jobs('brook')).toEqual([])
    expect((await tags('halden nine')).sort()).toEqual(['BLUE-7', 'T-0401', 'T-0402'])
    expect(await tags('halden 4')).toEqual([])
    expect([isInStep(url, 'CustomerText'), isInStep(url, 'HeadText')]).toEqual([true, true])
    plainSqlite(url, (file) =>
      file.exec(`DROP TRIGGER "CustomerText_find_update"; UPDATE "CustomerText" SET "text" = ' other words'`),
    )
    expect(isInStep(url, 'CustomerText')).toBe(false)
    await closeClient(url)
    await migrate(url)
    expect(isInStep(url, 'CustomerText')).toBe(true)
  })

  it('is not shown as customers to a machinist', async () => {
    await twoJobs()
    const kinds = async (actor: typeof counter) =>
      (await findAnything(actor, { q: 'brook' })).hits.map(({ kind }) => kind)
    expect(await kinds(counter)).toEqual(['customer', 'job'])
    expect(await kinds(machinist)).toEqual(['job'])
  })
})

describe('while booking', () => {
  it('finds a returning customer by name or phone', async () => {
    await twoJobs()
    expect(await findCustomers(counter, { q: 'ansel' })).toMatchObject([
      { name: 'Ansel Brook', phone: '+44 20 7946 0123' },
    ])
    expect(await findCustomers(counter, { q: '5550' })).toMatchObject([{ name: 'Tamsin Rook' }])
    expect(await findCustomers(counter, { q: 'a' })).toEqual([])
    expect(await refusalOf(findCustomers(machinist, { q: 'ansel' }))).toMatchObject({ code: 'not-allowed' })
  })

  it('does not find a customer whose contact was blanked', async () => {
    const { client } = await twoJobs()
    await client.customerContact.updateMany({
      where: { nameLower: 'ansel brook' },
      data: { blankedAt: monday },
    })
    expect(await findCustomers(counter, { q: 'ansel' })).toEqual([])
    expect(await jobs('ansel')).toEqual([])
  })

  it('finds a head that was here before', async () => {
    const { first } = await twoJobs()
    await book({}, at(monday))
    const [found] = await findHeads(counter, { q: '401' })
    expect(found).toMatchObject({
      headId: first.heads[0]?.headId,
      tag: 'T-0401',
      worn: true,
      jobNumber: '26-0001',
      casting: 'Halden 4',
    })
  })
})
