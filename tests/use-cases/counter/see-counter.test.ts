import { describe, expect, it } from 'vitest'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { testDatabase } from '@/tests/setup/database'
import { at, book, head, machinist, monday, openShop } from '../jobs/counter-shop'

const day = (days: number): Date => new Date(monday.getTime() + days * 24 * 60 * 60 * 1000)

async function shop() {
  const database = await testDatabase()
  await openShop(database)
  return database
}

const seen = (now = monday) => seeCounter(machinist, { now })

describe('at the counter', () => {
  it('an empty shop expects nothing', async () => {
    await shop()
    expect(await seen()).toMatchObject({ expected: [], ready: [], finished: [], answers: [], atRisk: [] })
  })

  it('a booked pair is expected, once, with its heads and the phone number', async () => {
    await shop()
    await book()
    const { expected } = await seen()
    expect(expected).toHaveLength(1)
    expect(expected[0]).toMatchObject({
      number: '26-0001',
      customer: 'Tamsin Rook',
      phone: '(555) 010-4477',
      daysLeft: 18,
    })
    expect(expected[0]?.heads.map((entry) => entry.tag)).toEqual(['T-0401', 'T-0402'])
  })

  it('a promise is at risk from two days before it, the latest first, until the heads are finished', async () => {
    const { client } = await shop()
    const near = await book({ heads: [head()], promiseOn: '2026-03-05' })
    await book({ heads: [head()], promiseOn: '2026-03-20' })
    await book({ heads: [head()], promiseOn: '' })
    const late = await book({ heads: [head()], promiseOn: '2026-03-03' })
    const risk = async (now: Date) => (await seen(now)).atRisk.map((job) => [job.number, job.daysLeft])
    // Monday is 2 March: three days before 5 March it is quiet, on Tuesday it is not.
    expect(await risk(monday)).toEqual([[late.number, 1]])
    expect(await risk(day(1))).toEqual([
      [late.number, 0],
      [near.number, 2],
    ])
    // 23:30 of 3 March in Chicago (UTC−6) is 05:30 UTC of the 4th: still the 3rd at the counter.
    expect(await risk(new Date('2026-03-04T05:30:00Z'))).toEqual([
      [late.number, 0],
      [near.number, 2],
    ])
    await client.visitPlace.update({
      where: { visitId: late.heads[0]?.visitId ?? '' },
      data: { whereabouts: 'finished' },
    })
    expect(await risk(day(2))).toEqual([[near.number, 1]])
    expect((await seen(day(2))).finished.map((job) => job.number)).toEqual([late.number])
  })

  it('says what a late head waits for', async () => {
    const { client } = await shop()
    const { heads } = await book({ heads: [head(), head(), head()], promiseOn: '2026-03-02' })
    const [away, parts, bench] = heads.map((entry) => entry.visitId)
    if (!away || !parts || !bench) throw new Error('three heads were booked')
    const place = (visitId: string, whereabouts: string) =>
      client.visitPlace.update({ where: { visitId }, data: { whereabouts } })
    await place(away, 'away')
    await client.vendor.create({
      data: {
        id: 'v',
        name: 'Tarn Grinding',
        phone: '',
        email: '',
        address: '',
        services: '',
        createdAt: monday,
      },
    })
    await client.outsideOrder.create({
      data: {
        id: 'o',
        number: '26-001',
        vendorId: 'v',
        instructions: '',
        scope: 'angle-cut',
        finishesToSize: false,
        freight: '',
        tracking: '',
        createdAt: monday,
        byId: 'p-owner',
        sentAt: monday,
        promisedOn: '2026-03-04',
        visits: {
          create: {
            id: 'ov',
            visitId: away,
            angleIn: 0.06,
            flatIn: 0,
            comesWith: '',
            confirmed: '',
            marksTyped: '',
            marksRead: '',
            redoCost: '',
          },
        },
      },
    })
    await place(parts, 'waiting for parts')
    await client.partsWait.create({
      data: {
        id: 'w',
        visitId: parts,
        stepId: 'guides',
        occurrence: '',
        what: 'bronze guides',
        fromWhom: '',
        openedAt: monday,
        openedById: 'p-owner',
      },
    })
    await place(bench, 'in house')
    const [job] = (await seen()).atRisk
    expect(job?.heads.map((entry) => entry.why)).toEqual([
      'away at Tarn Grinding, promised 2026-03-04',
      'waiting for bronze guides, no promise',
      expect.stringMatching(/\(front desk\)$/),
    ])
  })

  it('what is released is ready to hand over; what has left is nowhere', async () => {
    const { client } = await shop()
    const { heads } = await book()
    const [one, other] = heads.map((entry) => entry.visitId)
    await client.visitPlace.update({
      where: { visitId: one ?? '' },
      data: { whereabouts: 'released', changedAt: monday },
    })
    await client.visitPlace.update({ where: { visitId: other ?? '' }, data: { whereabouts: 'handed over' } })
    const view = await seen(day(3))
    expect(view.ready.map((job) => job.heads.map((entry) => [entry.tag, entry.since]))).toEqual([[['T-0401', monday]]])
    expect([view.expected, view.atRisk, view.finished]).toEqual([[], [], []])
  })

  it('an unanswered finding stands there with the number to call', async () => {
    const { client } = await shop()
    const { heads } = await book({}, at(monday))
    const finding = {
      visitId: heads[1]?.visitId ?? '',
      addsWork: '',
      reportedAt: monday,
      reportedById: 'p-machinist',
      askedHow: '',
      answeredBy: '',
    }
    await client.finding.create({ data: { ...finding, id: 'f1', what: 'Guide 3 is loose' } })
    await client.finding.create({
      data: { ...finding, id: 'f2', what: 'Old crack', answer: 'no', answeredAt: monday },
    })
    expect((await seen()).answers).toMatchObject([
      {
        what: 'Guide 3 is loose',
        tag: 'T-0402',
        jobNumber: '26-0001',
        phone: '(555) 010-4477',
        askedAt: null,
      },
    ])
  })
})
