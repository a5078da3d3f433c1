import { expect, it } from 'vitest'
import { bookJobSchema } from '@/lib/schemas/job'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { describeOnBoth, describeOnSqlite } from '@/tests/setup/database'
import {
  at,
  book,
  booking,
  casting,
  counter,
  head,
  machinist,
  monday,
  openShop,
  otherCasting,
  refusalOf,
} from './counter-shop'

const everything = {
  include: {
    customer: { include: { contact: true } },
    engine: { include: { figures: { orderBy: { key: 'asc' } } } },
    pairs: true,
    prices: true,
    payments: true,
    visits: {
      orderBy: { position: 'asc' },
      include: { head: { include: { tags: true } }, ordered: true, steps: true, place: true },
    },
  },
} as const

/** Every column of a job, and where the database itself decides. */
describeOnBoth('a booked job', (open) => {
  it('makes every row of it, and the audit', async () => {
    const database = await open()
    await openShop(database)
    const booked = await book({
      engine: {
        ...booking().engine,
        label: 'inline six',
        layout: 'inline',
        camInHead: 'yes',
        figures: { ...booking().engine.figures, boreIn: '4.030', cylinders: '6' },
      },
      ordered: [
        { work: 'flow-before', note: '' },
        { work: 'flat-cut', note: 'light hand' },
      ],
      prices: [{ text: 'Flat cut, pair', quantity: '2', unitPrice: '95.50', tax: '8.25' }],
      deposit: '100',
      depositHow: 'cash',
      classMinCc: '57',
      note: 'Call before Thursday.',
    })
    expect(booked.number).toBe('26-0001')
    expect(booked.heads.map((entry) => entry.tag)).toEqual(['T-0401', 'T-0402'])

    const job = await database.client.job.findUniqueOrThrow({ where: { number: '26-0001' }, ...everything })
    expect(job).toMatchObject({
      promiseOn: '2026-03-20',
      classMinCc: 57,
      classMinText: '57 cc',
      note: 'Call before Thursday.',
      version: 1,
    })
    expect(job.customer.contact).toMatchObject({
      name: 'Tamsin Rook',
      nameLower: 'tamsin rook',
      phone: '(555) 010-4477',
      phoneDigits: '5550104477',
    })
    expect(job.engine).toMatchObject({ layout: 'inline', camInHead: true })
    expect(job.engine?.figures).toMatchObject([
      { key: 'boreIn', value: 4.03, text: '4.030', unit: 'in' },
      { key: 'cylinders', value: 6, text: '6' },
    ])
    expect(job.pairs).toHaveLength(1)
    expect(job.prices).toMatchObject([
      { text: 'Flat cut, pair', quantityThousandths: 2000, unitMinor: 9550, taxMillionths: 82_500, endedAt: null },
    ])
    expect(job.payments).toMatchObject([{ kind: 'deposit', minor: 10000, how: 'cash', byId: 'p-counter' }])
    expect(job.visits.map((visit) => visit.side)).toEqual(['left', 'right'])
    for (const visit of job.visits) {
      expect(visit).toMatchObject({
        presentCc: 64,
        presentText: '64',
        targetCc: 58,
        targetText: '58.0',
        targetUnit: 'cc',
        pairId: job.pairs[0]?.id,
      })
      expect(visit.head).toMatchObject({ castingId: casting, material: 'iron', chamberForm: 'as-cast' })
      expect(visit.ordered.map((line) => [line.work, line.note])).toEqual(
        expect.arrayContaining([
          ['flow-before', ''],
          ['flat-cut', 'light hand'],
        ]),
      )
      expect(visit.steps.map((step) => step.stepId)).toEqual(
        expect.arrayContaining(['check-in', 'flow', 'flat-cut', 'hand-over']),
      )
      expect(visit.place?.whereabouts).toBe('expected')
    }

    const audit = await database.client.auditEntry.findMany({
      where: { jobId: job.id },
      orderBy: { seq: 'asc' },
    })
    expect(audit.map((entry) => entry.action).sort()).toEqual([
      'job.book',
      'payment.take',
      'price-line.add',
      'visit.book',
      'visit.book',
    ])
    expect(audit.every((entry) => entry.actorId === 'p-counter')).toBe(true)
    const all = await database.client.auditEntry.findMany()
    expect(all.map((entry) => entry.changes).join()).not.toMatch(/Tamsin|010-4477|5550104477/)
  })

  it('gives the same answer to the same operation, and books once', async () => {
    const database = await open()
    await openShop(database)
    const first = await book({}, at(monday, 'op-1'))
    const again = await book({}, at(monday, 'op-1'))
    expect(again).toEqual(first)
    expect(await database.client.job.count()).toBe(1)
    expect(await database.client.tagAssignment.count()).toBe(2)
    expect(await refusalOf(book({ note: 'other' }, at(monday, 'op-1', 'other')))).toMatchObject({
      code: 'operation-reused',
    })
  })

  it('hangs a tag that was typed, once at a time, and steps over it in its own series', async () => {
    const database = await open()
    await openShop(database)
    const own = await book({ heads: [head({ tag: '402' })] })
    expect(own.heads[0]?.tag).toBe('T-0402')
    const refused = await refusalOf(book({ heads: [head(), head({ tag: 'T-0402' })] }))
    expect(refused.code).toBe('invalid')
    expect(refused.fields['heads.1.tag']).toMatch(/T-0402 hangs on another head \(job 26-0001\)/)
    expect(await database.client.job.count()).toBe(1)
    expect(await database.client.head.count()).toBe(1)

    const next = await book({ heads: [head(), head()] })
    expect(next.heads.map((entry) => entry.tag)).toEqual(['T-0401', 'T-0403'])
    expect(bookJobSchema.safeParse(booking({ heads: [head({ tag: '7' }), head({ tag: 'T-0007' })] })).success).toBe(
      false,
    )
  })
})

describeOnSqlite('booking a job', (open) => {
  it('says all that is wrong at once, each at its field, and books nothing', async () => {
    const database = await open()
    await openShop(database)
    const refused = await refusalOf(
      book({
        promiseOn: '2026-03-01',
        heads: [head({ castingId: 'c-nowhere' }), head({ headId: 'h-nowhere', castingId: '' })],
        prices: [
          { text: 'Flat cut', quantity: '1', unitPrice: '9.999', tax: '' },
          { text: 'Angle cut', quantity: '1', unitPrice: '210', tax: 'rate:gone' },
        ],
        deposit: '1.001',
      }),
    )
    expect(Object.keys(refused.fields).sort()).toEqual([
      'deposit',
      'heads.0.castingId',
      'heads.1.headId',
      'prices.0.unitPrice',
      'prices.1.tax',
      'promiseOn',
    ])
    expect(await database.client.job.count()).toBe(0)
  })

  it('keeps a quantity of two as two, up to the job page', async () => {
    const database = await open()
    await openShop(database)
    const { number } = await book({
      prices: [{ text: 'Flat cut', quantity: '2', unitPrice: '95', tax: '8.25', perHead: true }],
    })
    // 2 · 95.00 = 190.00; 8.25 % of it is 15.675, rounded to 15.68
    const { account } = await seeJob(counter, { number, now: monday })
    expect(account?.prices).toMatchObject([{ quantityThousandths: 2000, unitMinor: 9_500 }])
    expect(account?.prices[0]?.typed.quantity).toBe('2')
    expect(account?.totalMinor).toBe(20_568)
  })

  it('numbers jobs by the year of the shop, not of the machine', async () => {
    const database = await open()
    await openShop(database)
    // 04:00 UTC on New Year's Day is 22:00 on the last day of the old year in Chicago (UTC−6).
    const oldYear = await book({ promiseOn: '' }, at(new Date('2027-01-01T04:00:00Z')))
    const newYear = await book({ promiseOn: '' }, at(new Date('2027-01-01T07:00:00Z')))
    expect([oldYear.number, newYear.number]).toEqual(['26-0001', '27-0001'])
  })

  it('makes one pair per casting', async () => {
    const database = await open()
    await openShop(database)
    const { heads } = await book({
      heads: [head(), head({ castingId: otherCasting }), head(), head({ castingId: '' })],
    })
    const pairs = heads.map((entry) => entry.pairId)
    expect(pairs[0]).toBe(pairs[2])
    expect(new Set(pairs).size).toBe(3)
    expect(await database.client.pair.count({ where: { castingId: null } })).toBe(1)
  })

  it('refuses a casting that is not on record, at its field', async () => {
    await openShop(await open())
    const refused = await refusalOf(book({ heads: [head(), head({ castingId: 'c-nowhere' })] }))
    expect(refused).toMatchObject({ code: 'invalid' })
    expect(Object.keys(refused.fields)).toEqual(['heads.1.castingId'])
  })

  it('refuses a machinist, and changes nothing', async () => {
    const database = await open()
    await openShop(database)
    expect(await refusalOf(book({}, at(monday), machinist))).toMatchObject({ code: 'not-allowed' })
    expect(await database.client.job.count()).toBe(0)
    expect(await database.client.counter.count()).toBe(0)
  })

  it('refuses a promise in the past and too many decimals, at their fields', async () => {
    await openShop(await open())
    expect((await refusalOf(book({ promiseOn: '2026-03-01' }))).fields).toHaveProperty('promiseOn')
    const price = { text: 'Wash', quantity: '1', unitPrice: '10.555', tax: '' }
    expect((await refusalOf(book({ prices: [price] }))).fields).toHaveProperty(['prices.0.unitPrice'])
  })

  it('takes a customer who was here before', async () => {
    const database = await open()
    await openShop(database)
    await book()
    const { customerId: id } = await database.client.customerContact.findFirstOrThrow()
    const contact = { name: '', phone: '', email: '', address: '' }
    await book({ customer: { id, ...contact } })
    expect(await database.client.customer.count()).toBe(1)
    expect(await database.client.job.count({ where: { customerId: id } })).toBe(2)
    expect((await refusalOf(book({ customer: { id: 'nobody', ...contact } }))).fields).toHaveProperty(['customer.name'])
  })
})

describeOnSqlite('booking a head that was here before', (open) => {
  it('is refused while it is still here, and is a second visit of the same head afterwards', async () => {
    const database = await open()
    await openShop(database)
    const first = await book({ heads: [head({ stamp: 'TR 1' })] })
    const [visit] = first.heads
    if (!visit) throw new Error('no head was booked')
    const again = {
      heads: [head({ headId: visit.headId, comeback: true, comebackCause: 'valve leaks', comebackPays: 'shop' })],
    }
    expect((await refusalOf(book(again))).fields['heads.0.headId']).toMatch(/still on job 26-0001/)

    await database.client.visitPlace.update({
      where: { visitId: visit.visitId },
      data: { whereabouts: 'handed over' },
    })
    const second = await book(again)
    expect(second.heads[0]?.headId).toBe(visit.headId)
    expect(await database.client.head.count()).toBe(1)
    const row = await database.client.visit.findUniqueOrThrow({
      where: { id: second.heads[0]?.visitId ?? '' },
    })
    expect(row).toMatchObject({
      comebackOfId: visit.visitId,
      comebackCause: 'valve leaks',
      comebackPays: 'shop',
    })
    // It still wore its tag, so it keeps it.
    expect(second.heads[0]?.tag).toBe(visit.tag)
    expect(await database.client.tagAssignment.count()).toBe(1)
  })

  it('knows no comeback of a new head', () => {
    expect(bookJobSchema.safeParse(booking({ heads: [head({ comeback: true })] })).success).toBe(false)
  })
})
