import { expect, it } from 'vitest'
import { loadDossier } from '@/lib/dossier/dossier'
import { orderSupplySchema, repromiseSupplySchema } from '@/lib/schemas/supply'
import { entrySchema, openHoldSchema, returnAsIsSchema } from '@/lib/schemas/visit'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeAway } from '@/lib/use-cases/outside/see-away'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { endSupply } from '@/lib/use-cases/supply/end-supply'
import { repromiseSupply } from '@/lib/use-cases/supply/repromise-supply'
import { seeArriving } from '@/lib/use-cases/supply/see-arriving'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { seeSupply } from '@/lib/use-cases/supply/see-supply'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { waiveGap } from '@/lib/use-cases/visits/waive-gap'
import { openWait } from '@/lib/use-cases/waits/open-wait'
import { describeOnBoth, describeOnSqlite, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { bookBought, cut58, order, orderForm, otherVendor, receive, strange, supplyShop } from './supply-shop'

const day = (days: number): Date => new Date(monday.getTime() + days * 24 * 60 * 60 * 1000)

const opened = async (open: () => Promise<TestDatabase>) => {
  const database = await open()
  await supplyShop(database)
  return database.client
}
type Client = TestDatabase['client']

const whereabouts = async (client: Client) =>
  (await client.visitPlace.findMany({ orderBy: { visitId: 'asc' } })).map((place) => place.whereabouts)
const worn = async (client: Client) =>
  (await client.tagAssignment.findMany({ orderBy: { sortNumber: 'asc' } })).map((tag) => tag.activeNumber)

/** Everything that a refused change must leave as it was. */
const rows = async (client: Client) => ({
  orders: await client.supplyOrder.findMany({ orderBy: { id: 'asc' } }),
  lines: await client.supplyLine.findMany({ orderBy: { id: 'asc' } }),
  heads: await client.supplyHead.findMany({ orderBy: { id: 'asc' } }),
  promises: await client.supplyPromise.count(),
  tags: await client.tagAssignment.findMany({ orderBy: { id: 'asc' } }),
  visits: await client.visit.findMany({ orderBy: { id: 'asc' } }),
  waits: await client.partsWait.findMany({ orderBy: { id: 'asc' } }),
  counters: await client.counter.findMany({ orderBy: { name: 'asc' } }),
  audit: await client.auditEntry.count(),
})

const boughtPair = async (client: Client) => {
  const job = await bookBought()
  const [one, other] = job.heads
  if (!one || !other) throw new Error('two heads were booked')
  const { orderId, number } = await order(orderForm(job))
  const version = async () => (await client.supplyOrder.findUniqueOrThrow({ where: { id: orderId } })).version
  return { job, one, other, orderId, number, version }
}

const key = (stepId: 'check-in' | 'thickness') => ({ stepId, occurrence: '', orderId: null })

describeOnSqlite('a head that is bought', (open) => {
  it('is on order from the booking, without a tag, and is called by its place on the job', async () => {
    const client = await opened(open)
    const job = await bookBought()
    expect(job.heads.map((entry) => entry.tag)).toEqual(['26-0001 head 1', '26-0001 head 2'])
    expect(await whereabouts(client)).toEqual(['on order', 'on order'])
    expect(await client.tagAssignment.count()).toBe(0)
    // The next head of a customer takes the first number: none was spent.
    expect((await book({ heads: [head()] })).heads[0]?.tag).toBe('T-0401')

    const view = await seeJob(machinist, { number: job.number, now: monday })
    expect(view.heads.map((entry) => [entry.tag, entry.whereabouts, entry.more])).toEqual([
      ['26-0001 head 1', 'on order', ', not yet ordered'],
      ['26-0001 head 2', 'on order', ', not yet ordered'],
    ])
    expect(view.supply).toMatchObject({ toOrder: ['26-0001 head 1', '26-0001 head 2'], mayOrder: false })
    const expected = (await seeCounter(machinist, { now: monday })).jobs.find((row) => row.number === job.number)
    expect(expected?.heads.map((entry) => entry.tag)).toEqual(['26-0001 head 1', '26-0001 head 2'])
    const queue = await seeQueue(machinist, 'front-desk')
    expect(queue.ready.map((line) => line.tag)).toEqual(['T-0401'])
    expect(queue.later.map((line) => line.tag)).toEqual(['26-0001 head 1', '26-0001 head 2'])
    expect(await refusalOf(printTagLabels(counter, job.number, monday))).toMatchObject({
      code: 'wrong-state',
    })
  })

  it('is here already when its number is typed at the booking', async () => {
    const client = await opened(open)
    const { heads } = await book({ heads: [head({ source: 'bought', tag: '77' })] })
    expect(heads[0]?.tag).toBe('T-0077')
    expect(await whereabouts(client)).toEqual(['expected'])
  })

  it('cannot be ticked, read, held, waived or found fault with while it is on order: the reason is said', async () => {
    const client = await opened(open)
    const { one } = await boughtPair(client)
    const { route } = await loadDossier(client, one.visitId)
    expect(route.length).toBeGreaterThan(3)
    for (const step of route) {
      expect(step.state).toBe('to do')
      expect(step.waitsFor).toContainEqual({ code: 'arrival' })
    }
    const before = await rows(client)
    const step = { visitId: one.visitId, step: key('check-in'), seen: 0 }
    const entry = entrySchema.parse({
      readings: [{ kind: 'condition', point: '', text: 'good', notTaken: null }],
      instrumentId: null,
      conditions: {},
      takenAt: null,
    })
    const hold = openHoldSchema.parse({ visitId: one.visitId, stepId: null, reason: 'x' })
    for (const attempt of [
      () => tickStep(owner, { ...step, entry: null }, at(monday)),
      () => recordReadings(owner, { ...step, entry }, at(monday)),
      () => openHold(owner, hold, at(monday)),
      () => reportFinding(owner, { visitId: one.visitId, stepId: null, what: 'a crack' }, at(monday)),
      () => waiveGap(owner, { visitId: one.visitId, gap: 'step:final||', reason: 'x' }, at(monday)),
    ]) {
      expect(await refusalOf(attempt())).toMatchObject({
        code: 'wrong-state',
        message: expect.stringContaining('on order and not here yet') as string,
      })
    }
    expect(await rows(client)).toEqual(before)
    expect(await client.readingSet.count()).toBe(0)
  })
})

describeOnSqlite('a supply order', (open) => {
  it('has a number, a promise and its lines; the nominal volume of what is bought stands for the head', async () => {
    const client = await opened(open)
    const { orderId, number, job } = await boughtPair(client)
    expect(number).toBe('S-0001')
    expect(await seeSupply(counter, orderId, day(3))).toMatchObject({
      number: 'S-0001',
      vendor: 'Causey Foundry',
      jobNumber: '26-0001',
      orderedOn: '2026-03-02',
      daysOut: 3,
      promisedOn: '2026-03-12',
      daysLate: 0,
      holdsUp: '2026-03-20',
      promises: [{ on: '2026-03-12' }],
      lines: [
        {
          kind: 'head',
          what: 'Halden 4, 58 cc',
          nominal: '58.0 cc nominal',
          quantity: 2,
          arrived: 0,
          costMinor: 70000,
        },
      ],
      nextTag: 'T-0401',
    })
    for (const visit of await client.visit.findMany()) {
      expect(visit).toMatchObject({ presentCc: 58, presentText: '58.0', presentUnit: 'cc' })
    }
    const view = await seeJob(counter, { number: job.number, now: monday })
    expect(view.supply).toMatchObject({ toOrder: [], orders: [{ number: 'S-0001' }] })
    expect(view.heads[0]?.more).toBe(' from Causey Foundry, promised Mar 12, 2026')
    const entry = await client.auditEntry.findFirstOrThrow({
      where: { action: 'supply-order.order' },
    })
    expect(entry).toMatchObject({ actorId: 'p-counter', subjectId: orderId, jobId: job.jobId })
  })

  it('keeps what was typed for a head over what its maker says', async () => {
    const client = await opened(open)
    const job = await book({ heads: [head({ source: 'bought-cut', presentCc: '57.5' })] })
    await order(orderForm(job))
    expect(await client.visit.findFirstOrThrow()).toMatchObject({ presentCc: 57.5, presentText: '57.5' })
  })

  it('proposes what nobody has ordered: heads of one casting on one line, waits for parts', async () => {
    const client = await opened(open)
    const job = await bookBought()
    const ordering = await seeOrdering(counter, { job: job.number, now: monday })
    expect(ordering.heads).toMatchObject([
      {
        casting: 'Halden 4',
        cut: true,
        heads: [{ name: '26-0001 head 1' }, { name: '26-0001 head 2' }],
        // Ten days after 2 March.
        variants: [{ name: '58 cc', hereBy: '2026-03-12', cost: '700.00' }],
      },
    ])
    await order(orderForm(job))
    expect((await seeOrdering(counter, { job: null, now: monday })).heads).toEqual([])
    expect(await client.supplyHead.count()).toBe(2)
  })

  it('is refused for a head that is the customer’s, is here, is on order, or is another casting', async () => {
    const client = await opened(open)
    const { job } = await boughtPair(client)
    const own = await book({ heads: [head()] })
    const third = await book({ heads: [head({ source: 'bought' })] })
    const before = await rows(client)
    const tried = async (form: Parameters<typeof order>[0]) => (await refusalOf(order(form))).fields
    expect(await tried(orderForm(own))).toEqual({
      'heads.0.visitIds': 'T-0401 belongs to the customer. Take it off the order.',
    })
    expect(await tried(orderForm(job))).toEqual({
      'heads.0.visitIds': '26-0001 head 1 is already on supply order S-0001.',
    })
    const visitIds = third.heads.map((entry) => entry.visitId)
    expect(await tried(orderForm(third, { heads: [{ variantId: strange, what: '', visitIds, cost: '' }] }))).toEqual({
      'heads.0.variantId': 'bare is a different casting from 26-0003 head 1.',
    })
    expect(
      await tried(
        orderForm(third, {
          heads: [{ variantId: cut58, what: '', visitIds: [...visitIds, ...visitIds], cost: '' }],
        }),
      ),
    ).toHaveProperty(['heads.0.visitIds'])
    expect(await tried(orderForm(third, { vendorId: third.jobId }))).toHaveProperty('vendorId')
    expect(orderSupplySchema.safeParse(orderForm(job, { heads: [] })).success).toBe(false)
    expect(await rows(client)).toEqual(before)
  })
})

describeOnSqlite('an arrival', (open) => {
  it('hangs tags on what came, the next number or the one typed, and the rest stays out', async () => {
    const client = await opened(open)
    const { one, other, orderId } = await boughtPair(client)
    const came = await receive(orderId, 1, [{ visitId: other.visitId, tag: '88' }])
    expect(came).toMatchObject({ all: false, heads: [{ tag: 'T-0088', free: false }] })
    expect(await whereabouts(client)).toEqual(['on order', 'expected'])
    expect(await seeSupply(machinist, orderId, monday)).toMatchObject({
      open: true,
      lines: [
        {
          arrived: 1,
          for: [
            { tag: '26-0001 head 1', here: false },
            { tag: 'T-0088', here: true },
          ],
        },
      ],
    })
    expect(await receive(orderId, 2, [{ visitId: one.visitId }])).toMatchObject({
      all: true,
      heads: [{ tag: 'T-0401' }],
    })
    expect(await whereabouts(client)).toEqual(['expected', 'expected'])
    expect((await seeSupply(machinist, orderId, monday)).open).toBe(false)
    const labels = await printTagLabels(counter, '26-0001', monday)
    expect((await labels.bytes()).length).toBeGreaterThan(1000)
    // Now it goes on as any head: check in is the next thing, and waits for nothing.
    const { route } = await loadDossier(client, one.visitId)
    expect(route.find((step) => step.stepId === 'check-in')).toMatchObject({ state: 'ready', waitsFor: [] })
    // Cut by its maker: no chambers before, measured when finished.
    expect(route.map((step) => step.stepId)).not.toContain('chambers')
    expect(route.map((step) => step.stepId)).toContain('finished')
  })

  it('refuses a number that hangs on another head, at its field, and hangs none', async () => {
    const client = await opened(open)
    const { one, other, orderId } = await boughtPair(client)
    await book({ heads: [head({ tag: '90' })] })
    const before = await rows(client)
    const taken = await refusalOf(
      receive(orderId, 1, [{ visitId: one.visitId }, { visitId: other.visitId, tag: 'T-0090' }]),
    )
    expect(taken.fields['heads.1.tag']).toMatch(/T-0090 hangs on another head \(job 26-0002\)/)
    // The same number twice in one box is as wrong.
    const twice = await refusalOf(
      receive(orderId, 1, [
        { visitId: one.visitId, tag: '91' },
        { visitId: other.visitId, tag: '91' },
      ]),
    )
    expect(twice.fields['heads.1.tag']).toMatch(/T-0091 hangs on another head/)
    expect(await rows(client)).toEqual(before)
  })

  it('of a head whose job was pulled gives it a tag, leaves the job as it is, and frees the head for another', async () => {
    const client = await opened(open)
    const { one, other, orderId } = await boughtPair(client)
    const pull = returnAsIsSchema.parse({ visitId: one.visitId, reason: 'The customer sold the car.' })
    await returnAsIs(counter, pull, at(monday))
    expect(await whereabouts(client)).toEqual(['returned as is', 'on order'])
    expect((await seeSupply(counter, orderId, monday)).lines[0]?.for).toMatchObject([
      { tag: '26-0001 head 1', pulled: true },
      { tag: '26-0001 head 2', pulled: false },
    ])
    const { heads } = await receive(orderId, 1, [{ visitId: one.visitId }, { visitId: other.visitId }])
    expect(heads).toMatchObject([
      { tag: 'T-0401', free: true },
      { tag: 'T-0402', free: false },
    ])
    expect(await whereabouts(client)).toEqual(['returned as is', 'expected'])
    const next = await book({ heads: [head({ headId: one.headId, source: 'bought-cut' })] })
    expect(next.heads[0]).toMatchObject({ headId: one.headId, tag: 'T-0401' })
  })

  it('refuses a head of another order', async () => {
    const client = await opened(open)
    const { orderId } = await boughtPair(client)
    const strangers = await bookBought()
    await order(orderForm(strangers))
    const before = await rows(client)
    const visitId = strangers.heads[0]?.visitId ?? ''
    expect(await refusalOf(receive(orderId, 1, [{ visitId }]))).toMatchObject({ code: 'not-found' })
    expect(await rows(client)).toEqual(before)
  })
})

describeOnSqlite('parts', (open) => {
  const waiting = async (client: Client) => {
    const { heads, jobId } = await book({ heads: [head()] })
    const visitId = heads[0]?.visitId ?? ''
    const wait = { visitId, step: key('check-in'), what: 'eight valves', fromWhom: '', promisedOn: null }
    const { waitId } = await openWait(machinist, wait, at(monday))
    const parts = [{ what: 'eight valves', quantity: '8', waitId, cost: '12.50' }]
    const form = { vendorId: otherVendor, jobId, promisedOn: '2026-03-05', note: '', heads: [], parts }
    const { orderId } = await order(form)
    const lineId = (await client.supplyLine.findFirstOrThrow({ where: { waitId } })).id
    const wait_ = () => client.partsWait.findUniqueOrThrow({ where: { id: waitId } })
    return { orderId, lineId, waitId, form, wait: wait_ }
  }

  it('that came in part do not end the wait; when all are here they do', async () => {
    const client = await opened(open)
    const { orderId, lineId, wait } = await waiting(client)
    expect(await wait()).toMatchObject({
      fromWhom: 'Lathom Parts',
      promisedOn: '2026-03-05',
      arrivedAt: null,
    })
    expect((await seeAway(machinist, monday)).parts).toMatchObject([{ what: 'eight valves', supply: { orderId } }])
    await receive(orderId, 1, [], [{ lineId, quantity: '3' }])
    expect(await wait()).toMatchObject({ arrivedAt: null })
    const before = await rows(client)
    expect((await refusalOf(receive(orderId, 2, [], [{ lineId, quantity: '6' }]))).fields['parts.0.quantity']).toBe(
      'Only 5 of eight valves are still on order.',
    )
    expect(await rows(client)).toEqual(before)
    expect(await receive(orderId, 2, [], [{ lineId, quantity: '5' }])).toMatchObject({ all: true })
    expect(await wait()).toMatchObject({ arrivedAt: monday })
    expect((await seeAway(machinist, monday)).parts).toEqual([])
    expect(await client.auditEntry.count({ where: { action: 'parts-wait.end' } })).toBe(1)
  })

  it('are ordered once for a wait, and may be ordered again when the order was ended', async () => {
    const client = await opened(open)
    const { orderId, form } = await waiting(client)
    expect((await refusalOf(order(form))).fields).toEqual({
      'parts.0.waitId': 'These parts are already on supply order S-0001.',
    })
    await endSupply(counter, { orderId, version: 1, reason: 'They have none left.' }, at(monday))
    expect((await seeOrdering(counter, { job: null, now: monday })).parts).toMatchObject([{ what: 'eight valves' }])
    expect((await order(form)).number).toBe('S-0002')
    const before = await rows(client)
    expect(await refusalOf(receive(orderId, 2, [], [{ lineId: orderId, quantity: '1' }]))).toMatchObject({
      code: 'conflict',
    })
    expect(await rows(client)).toEqual(before)
  })
})

describeOnSqlite('a promise', (open) => {
  it('stands at the counter on its day and from then on, and at Away with the days', async () => {
    const client = await opened(open)
    const { number } = await boughtPair(client)
    const numbers = async (now: Date) =>
      (await seeArriving(machinist, now)).rows.map((entry) => [entry.number, entry.daysLate])
    // Promised for 12 March, a Thursday: ten days after Monday the 2nd.
    expect(await numbers(day(9))).toEqual([])
    expect(await numbers(day(10))).toEqual([[number, 0]])
    expect(await numbers(day(13))).toEqual([[number, 3]])
    const [supplier] = (await seeAway(machinist, day(13))).suppliers
    expect(supplier).toMatchObject({
      name: 'Causey Foundry',
      orders: [{ number, daysOut: 13, daysLate: 3, holdsUp: '2026-03-20' }],
    })
  })
})

describeOnSqlite('who may', (open) => {
  it('a machinist receives, and neither orders, re-promises, ends nor sees what it costs', async () => {
    const client = await opened(open)
    const { job, one, orderId } = await boughtPair(client)
    const before = await rows(client)
    const promise = repromiseSupplySchema.parse({ orderId, version: 1, promisedOn: '2026-03-16', note: '' })
    for (const attempt of [
      () => order(orderForm(job), at(monday), machinist),
      () =>
        order(
          orderForm(job, { heads: [{ variantId: cut58, what: '', visitIds: [one.visitId], cost: '1' }] }),
          at(monday),
          machinist,
        ),
      () => repromiseSupply(machinist, promise, at(monday)),
      () => endSupply(machinist, { orderId, version: 1, reason: 'x' }, at(monday)),
      () => seeOrdering(machinist, { job: null, now: monday }),
    ]) {
      expect(await refusalOf(attempt())).toMatchObject({ code: 'not-allowed' })
    }
    expect(await rows(client)).toEqual(before)
    for (const seen of [
      await seeSupply(machinist, orderId, monday),
      await seeAway(machinist, monday),
      await seeJob(machinist, { number: job.number, now: monday }),
      await seeArriving(machinist, day(20)),
    ]) {
      expect(JSON.stringify(seen)).toContain('S-0001')
      expect(JSON.stringify(seen)).not.toMatch(/70000|700\.00|costMinor/)
    }
    expect(JSON.stringify(await seeSupply(counter, orderId, monday))).toContain('70000')
    expect(await receive(orderId, 1, [{ visitId: one.visitId }])).toMatchObject({ number: 'S-0001' })
  })

  it('somebody without a role does nothing at all', async () => {
    const client = await opened(open)
    const { job, one, orderId } = await boughtPair(client)
    const nobody = { ...machinist, roles: [] }
    const before = await rows(client)
    for (const attempt of [
      () => order(orderForm(job), at(monday), nobody),
      () => receive(orderId, 1, [{ visitId: one.visitId }], [], at(monday), nobody),
      () => seeSupply(nobody, orderId, monday),
      () => seeArriving(nobody, monday),
    ]) {
      expect(await refusalOf(attempt())).toMatchObject({ code: 'not-allowed' })
    }
    expect(await rows(client)).toEqual(before)
  })
})

/** Where the database itself decides: one operation twice, many at once, a version that has gone on. */
describeOnBoth('an order, its arrival and its promise', (open) => {
  it('is ordered once for one operation, and once for one head however many order it at once', async () => {
    const client = await opened(open)
    const job = await bookBought()
    const first = await order(orderForm(job), at(monday, 'op-1'))
    expect(await order(orderForm(job), at(monday, 'op-1'))).toEqual(first)
    expect(await client.supplyOrder.count()).toBe(1)

    const next = await bookBought()
    const answers = await Promise.allSettled([1, 2, 3, 4].map(() => order(orderForm(next))))
    expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    expect(await client.supplyHead.count()).toBe(4)
    expect(await client.supplyOrder.count()).toBe(2)
  })

  it('arrives once: the same operation again gives the same answer, another one is a conflict', async () => {
    const client = await opened(open)
    const { one, orderId } = await boughtPair(client)
    const heads = [{ visitId: one.visitId }]
    const first = await receive(orderId, 1, heads, [], at(monday, 'op-1'))
    expect(await receive(orderId, 1, heads, [], at(monday, 'op-1'))).toEqual(first)
    const before = await rows(client)
    expect(await refusalOf(receive(orderId, 1, heads))).toMatchObject({ code: 'conflict' })
    // Seen anew, and the head still picked: it is here already.
    expect(await refusalOf(receive(orderId, 2, heads))).toMatchObject({ code: 'conflict' })
    expect(await rows(client)).toEqual(before)
    expect(await worn(client)).toEqual(['T-0401'])
  })

  it('arrives once, told by ten at once', async () => {
    const client = await opened(open)
    const { job, orderId } = await boughtPair(client)
    const heads = job.heads.map(({ visitId }) => ({ visitId }))
    const answers = await Promise.allSettled(Array.from({ length: 10 }, () => receive(orderId, 1, heads)))
    expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    expect(await worn(client)).toEqual(['T-0401', 'T-0402'])
    expect(await client.supplyLine.findFirstOrThrow()).toMatchObject({ arrived: 2, quantity: 2 })
    expect(await client.auditEntry.count({ where: { action: 'supply-order.receive' } })).toBe(1)
  })

  it('promised anew keeps the old promise, and is refused to whoever looked before', async () => {
    const client = await opened(open)
    const { orderId } = await boughtPair(client)
    const promise = (version: number, promisedOn: string) =>
      repromiseSupply(
        counter,
        repromiseSupplySchema.parse({ orderId, version, promisedOn, note: 'furnace is down' }),
        at(monday),
      )
    await promise(1, '2026-03-16')
    expect((await seeSupply(counter, orderId, monday)).promises.map((entry) => entry.on)).toEqual([
      '2026-03-12',
      '2026-03-16',
    ])
    expect(await refusalOf(promise(1, '2026-03-18'))).toMatchObject({ code: 'conflict' })
    expect((await seeSupply(counter, orderId, monday)).promisedOn).toBe('2026-03-16')
  })
})
