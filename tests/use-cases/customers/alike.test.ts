import { expect, it } from 'vitest'
import { refuseAlike } from '@/lib/data/alike'
import { seeAlike } from '@/lib/use-cases/customers/see-alike'
import { describeOnBoth, type TestDatabase } from '@/tests/setup/database'
import { at, book, bookAsTyped, counter, head, monday, openShop, refusalOf } from '../jobs/counter-shop'

const nobody = { id: '', name: '', phone: '', email: '' }
const contact = { id: '', email: '', address: '' }

describeOnBoth('who and what a booking may mean', (open) => {
  async function shop() {
    const database = await open()
    await openShop(database)
    const rook = await book({ heads: [head({ stamp: 'TR 1', tag: 'blue-7' })] })
    await book({
      customer: { ...contact, name: 'Ann-Marie Böhm', phone: '+1 555 0139', email: 'am@post.example' },
      heads: [head()],
    })
    const { customerId } = await database.client.job.findUniqueOrThrow({ where: { number: rook.number } })
    return { client: database.client, rook, customerId }
  }
  const named = async (typed: Partial<typeof nobody>) =>
    (await seeAlike(counter, { customer: { ...nobody, ...typed }, heads: [] })).customers.map(({ name, by }) => [
      name,
      by,
    ])

  it('a customer by number, address or name', async () => {
    const { customerId } = await shop()
    expect(await named({ name: 'Tamsyn Rook' })).toEqual([['Tamsin Rook', 'name']])
    expect(await named({ name: 'Rook, Tamsin' })).toEqual([['Tamsin Rook', 'name']])
    expect(await named({ name: 'Bohm Annmarie' })).toEqual([])
    expect(await named({ name: 'annmarie bohm' })).toEqual([['Ann-Marie Böhm', 'name']])
    expect(await named({ name: 'Somebody', phone: '555-010-4477' })).toEqual([['Tamsin Rook', 'phone']])
    expect(await named({ name: 'Somebody', phone: '555 0139' })).toEqual([['Ann-Marie Böhm', 'phone']])
    expect(await named({ name: 'Somebody', email: 'am@post.example' })).toEqual([['Ann-Marie Böhm', 'email']])
    expect(await named({ name: 'Ansel Brook', phone: '555 0140' })).toEqual([])
    expect(await named({})).toEqual([])
    expect(await named({ id: customerId, name: 'Tamsin Rook' })).toEqual([])
  })

  it('a head by its stamp or by a tag that it wears or wore', async () => {
    const { client, rook } = await shop()
    const heads = async (typed: { stamp?: string; tag?: string; headId?: string }) =>
      (await seeAlike(counter, { customer: nobody, heads: [{ headId: '', stamp: '', tag: '', ...typed }] })).heads.map(
        ({ headId, by }) => [headId, by],
      )
    const { headId } = rook.heads[0] ?? { headId: '' }
    expect(await heads({ stamp: 'tr-1' })).toEqual([[headId, 'stamp']])
    expect(await heads({ stamp: 'TR 2' })).toEqual([])
    expect(await heads({ tag: 'BLUE-7' })).toEqual([[headId, 'tag']])
    await client.tagAssignment.updateMany({ where: { headId }, data: { activeNumber: null, to: new Date() } })
    expect(await heads({ tag: 'blue-7', stamp: 'TR1' })).toEqual([[headId, 'tag']])
    expect(await heads({ stamp: 'TR 1', headId })).toEqual([])
    expect(await heads({})).toEqual([])
  })

  it('is refused until it is answered, with the ids', async () => {
    const { client, rook, customerId } = await shop()
    const headId = rook.heads[0]?.headId ?? ''
    const typed = {
      customer: { ...nobody, name: 'Tamsin Rook' },
      heads: [{ headId: '', stamp: 'TR 1', tag: '' }],
    }
    const refusal = await refusalOf(refuseAlike(client, typed, { customers: [], heads: [] }))
    expect(refusal).toMatchObject({ code: 'ambiguous', alike: { customers: [customerId], heads: [headId] } })
    expect(Object.keys(refusal.fields).sort()).toEqual(['customer.name', 'heads.0.stamp'])
    const half = await refusalOf(refuseAlike(client, typed, { customers: [customerId], heads: [] }))
    expect(half.alike).toEqual({ customers: [], heads: [headId] })
    await refuseAlike(client, typed, { customers: [customerId], heads: [headId] })
  })

  const rows = async (client: TestDatabase['client']) => [
    await client.job.count(),
    await client.customer.count(),
    await client.head.count(),
    await client.auditEntry.count(),
    (await client.counter.findMany({ orderBy: { name: 'asc' } })).map(({ name, value }) => [name, value]),
  ]

  it('is not booked until each is answered; another id is no answer', async () => {
    const { client, rook, customerId } = await shop()
    const headId = rook.heads[0]?.headId ?? ''
    const other = { customers: ['c-other', headId], heads: ['h-other', customerId] }
    const before = await rows(client)
    const one = { heads: [head({ stamp: 'tr1' })] }
    const asked = { code: 'ambiguous', alike: { customers: [customerId], heads: [headId] } }
    expect(await refusalOf(bookAsTyped(one))).toMatchObject(asked)
    expect(await refusalOf(bookAsTyped({ ...one, notThese: other }))).toMatchObject(asked)
    const half = await refusalOf(bookAsTyped({ ...one, notThese: { customers: [customerId], heads: [] } }))
    expect(half.alike).toEqual({ customers: [], heads: [headId] })
    expect(await rows(client)).toEqual(before)

    const notThese = { customers: [customerId], heads: [headId] }
    const booked = await bookAsTyped({ ...one, notThese })
    const job = await client.job.findUniqueOrThrow({ where: { id: booked.jobId } })
    expect(job.customerId).not.toBe(customerId)
    expect(booked.heads[0]?.headId).not.toBe(headId)
    const trail = await client.auditEntry.findFirstOrThrow({ where: { action: 'job.book', jobId: booked.jobId } })
    expect(JSON.parse(trail.changes)).toMatchObject({ value: { notThese } })
  })

  it('is booked for the one it is, when that one is picked', async () => {
    const { client, rook, customerId } = await shop()
    const headId = rook.heads[0]?.headId ?? ''
    await client.visitPlace.updateMany({ data: { whereabouts: 'handed over' } })
    const customer = { ...contact, id: customerId, name: 'Tamsin Rook', phone: '(555) 010-4477' }
    const booked = await bookAsTyped({ customer, heads: [head({ headId, stamp: 'TR 1', tag: 'blue-7' })] })
    expect(booked.heads[0]).toMatchObject({ headId, tag: 'BLUE-7' })
    expect((await client.job.findUniqueOrThrow({ where: { id: booked.jobId } })).customerId).toBe(customerId)
  })

  it('asks about a tag however it is typed, and still refuses it while it hangs', async () => {
    const { client, rook } = await shop()
    const headId = rook.heads[0]?.headId ?? ''
    const customer = { ...contact, name: 'Ansel Brook', phone: '' }
    const typed = { customer, heads: [head({ tag: ' Blue-7 ' })] }
    const before = await rows(client)
    const refusal = await refusalOf(bookAsTyped(typed))
    expect(refusal).toMatchObject({ code: 'ambiguous', alike: { customers: [], heads: [headId] } })
    const hung = await refusalOf(bookAsTyped({ ...typed, notThese: { customers: [], heads: [headId] } }))
    expect(hung.fields['heads.0.tag']).toMatch(/BLUE-7 hangs on another head/)
    expect(await rows(client)).toEqual(before)
  })

  it('of two at once that name the same new customer, one is booked and the other is asked', async () => {
    const { client } = await shop()
    const customer = { ...contact, name: 'Ansel Brook', phone: '555 0140' }
    const outcomes = await Promise.allSettled(
      ['op-1', 'op-2'].map((op) => bookAsTyped({ customer, heads: [head()] }, at(monday, op))),
    )
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    const lost = outcomes.find((outcome) => outcome.status === 'rejected')
    const added = await client.customerContact.findMany({ where: { name: 'Ansel Brook' } })
    expect(added).toHaveLength(1)
    expect(lost?.reason).toMatchObject({ refusal: { alike: { customers: [added[0]?.customerId], heads: [] } } })
  })

  it('one operation sent five times at once is booked once, and every one of them is told so', async () => {
    const { client } = await shop()
    const customer = { ...contact, name: 'Ansel Brook', phone: '555 0140' }
    const answers = await Promise.all(
      Array.from({ length: 5 }, () => bookAsTyped({ customer, heads: [head()] }, at(monday, 'op-1'))),
    )
    expect(new Set(answers.map(({ number }) => number)).size).toBe(1)
    expect(await client.customerContact.count({ where: { name: 'Ansel Brook' } })).toBe(1)
  })
})
