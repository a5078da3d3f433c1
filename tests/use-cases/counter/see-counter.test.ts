import { describe, expect, it } from 'vitest'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import type { WorkFilter } from '@/lib/use-cases/counter/work-filters'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { testDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop } from '../jobs/counter-shop'

const day = (days: number): Date => new Date(monday.getTime() + days * 24 * 60 * 60 * 1000)

async function shop() {
  const database = await testDatabase()
  await openShop(database)
  return database
}

const seen = (now = monday) => seeCounter(machinist, { now })

describe('at the counter', () => {
  it('an empty shop has no work in hand', async () => {
    await shop()
    expect(await seen()).toMatchObject({
      jobs: [],
      ready: [],
      toRelease: [],
      answers: [],
      atRisk: [],
      counts: { all: 0 },
    })
  })

  it('a booked pair is one job, with its heads, the phone number and when it will be ready', async () => {
    await shop()
    await book()
    const { jobs } = await seen()
    expect(jobs).toHaveLength(1)
    expect(jobs[0]).toMatchObject({
      number: '26-0001',
      customer: 'Tamsin Rook',
      phone: '(555) 010-4477',
      daysLeft: 18,
      finish: { from: 'from settings' },
      atRisk: false,
      dueMinor: null,
    })
    expect(jobs[0]?.heads.map((entry) => [entry.tag, entry.next])).toEqual([
      ['T-0401', 'not here yet'],
      ['T-0402', 'not here yet'],
    ])
    expect((await seeCounter(counter, { now: monday })).jobs[0]?.dueMinor).toBe(0)
  })

  it('a promise is at risk from the first day on, until the heads are ready', async () => {
    const { client } = await shop()
    const near = await book({ heads: [head()], promiseOn: '2026-03-05' })
    await book({ heads: [head()], promiseOn: '2026-05-20' })
    await book({ heads: [head()], promiseOn: '' })
    const late = await book({ heads: [head()], promiseOn: '2026-03-03' })
    const risk = async (now: Date) => (await seen(now)).atRisk.map((job) => [job.number, job.daysLeft])
    // Some ten steps of 0.4 working days each are more than the three of Monday, Tuesday and Wednesday.
    expect(await risk(monday)).toEqual([
      [late.number, 1],
      [near.number, 3],
    ])
    // 23:30 of 3 March in Chicago (UTC−6) is 05:30 UTC of the 4th: still the 3rd at the counter.
    expect(await risk(new Date('2026-03-04T05:30:00Z'))).toEqual([
      [late.number, 0],
      [near.number, 2],
    ])
    const place = (whereabouts: string) =>
      client.visitPlace.update({ where: { visitId: late.heads[0]?.visitId ?? '' }, data: { whereabouts } })
    await place('finished')
    expect((await seen(day(2))).toRelease.map((job) => job.number)).toEqual([late.number])
    await place('released')
    expect(await risk(day(2))).toEqual([[near.number, 1]])
  })

  it('each filter shows its jobs, and says how many', async () => {
    const { client } = await shop()
    const jobs: BookedJob[] = []
    for (const promiseOn of ['2026-03-06', '2026-05-20', '2026-05-21', '2026-05-22', '2026-05-23']) {
      jobs.push(await book({ heads: [head()], promiseOn }))
    }
    const place = (number: number, whereabouts: string, days = 0) =>
      client.visitPlace.update({
        where: { visitId: jobs[number]?.heads[0]?.visitId ?? '' },
        data: { whereabouts, changedAt: day(days) },
      })
    await place(1, 'away')
    await place(2, 'waiting for an answer')
    await place(3, 'released', -15)
    await place(4, 'released', -13)
    const { counts } = await seen()
    expect(counts).toEqual({ all: 5, due: 1, risk: 1, away: 1, answer: 1, ready: 2, uncollected: 1 })
    const under = async (filter: WorkFilter) =>
      (await seeCounter(machinist, { now: monday, filter })).jobs.map((job) => job.number)
    const numberOf = (place: number) => jobs[place]?.number
    expect(await under('due')).toEqual([numberOf(0)])
    expect(await under('risk')).toEqual([numberOf(0)])
    expect(await under('away')).toEqual([numberOf(1)])
    expect(await under('answer')).toEqual([numberOf(2)])
    expect(await under('ready')).toEqual([numberOf(3), numberOf(4)])
    expect(await under('uncollected')).toEqual([numberOf(3)])
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
    expect(job?.heads.map(({ next, waits }) => [next, waits])).toEqual([
      ['away', 'Tarn Grinding, due Mar 4, 2026'],
      ['waiting for parts', 'bronze guides, no promise'],
      [expect.stringMatching(/\(front desk\)$/), ''],
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
    expect([view.atRisk, view.toRelease]).toEqual([[], []])
    expect(view.jobs.map(({ finish }) => finish)).toEqual([null])
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
