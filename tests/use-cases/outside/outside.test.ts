import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import type { StepId } from '@/lib/core/route/step-ids'
import { planResults } from '@/lib/data/stored/plan'
import { routeStepOf } from '@/lib/data/visits'
import {
  acceptOrderSchema,
  changeOrderSchema,
  confirmOutsideSchema,
  leaveMarginSchema,
  noteOutsideCostSchema,
  receiveOutsideSchema,
  rejectOutsideSchema,
  repromiseSchema,
  sendOutsideSchema,
} from '@/lib/schemas/outside'
import { acceptOrder } from '@/lib/use-cases/outside/accept-order'
import { changeOrder } from '@/lib/use-cases/outside/change-order'
import { confirmOutside } from '@/lib/use-cases/outside/confirm-outside'
import { leaveMargin } from '@/lib/use-cases/plans/leave-margin'
import { noteOutsideCost } from '@/lib/use-cases/outside/note-cost'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { rejectOutside } from '@/lib/use-cases/outside/reject-outside'
import { repromise } from '@/lib/use-cases/outside/repromise'
import { seeAway } from '@/lib/use-cases/outside/see-away'
import { seeOrder } from '@/lib/use-cases/outside/see-order'
import { seeSending } from '@/lib/use-cases/outside/see-sending'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { filledDatabase, type TestDatabase } from '@/tests/setup/database'
import { asksOf, selectsOf } from '@/tests/setup/statements'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { acceptNewest, bookAnother, makePlan, shopWithJob, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

const vendorId = '019caed9-4300-7000-8000-00000000000a'
const day = (days: number): Date => new Date(monday.getTime() + days * 24 * 60 * 60 * 1000)
const on = (days: number): string => day(days).toISOString().slice(0, 10)

let database: TestDatabase
let visitId: string
let mateId: string
let pairId: string

/** A pair measured and ready to go out: 63 thou at the exhaust edge and 20 flat, seat work ordered. */
async function readyPair(plan: 'angle-flat' | 'angle' = 'angle-flat', yes = true) {
  const job = await bookAnother({ ordered: ['angle-cut', 'flat-cut', 'seat-work'], targetCc: '54.0' })
  for (const head of job.heads) await workThrough(head.visitId, ['angle-cut', 'seat-work'])
  await makePlan(job, { kind: plan, splitBy: 'flat', flatIn: plan === 'angle' ? '' : '0.020' })
  if (yes) await acceptNewest(job)
  for (const head of job.heads) await workThrough(head.visitId, ['angle-cut', 'seat-work'])
  return job
}

/** The shop, its vendor and the pair; filled once, each test has its own copy. */
async function shopWithReadyPair(filling: TestDatabase) {
  await shopWithJob(filling)
  const vendor = { id: vendorId, name: 'Tarn Grinding', phone: '555-0142', email: '', address: '', services: '' }
  await filling.client.vendor.create({ data: { ...vendor, boxHeads: 4, createdAt: monday } })
  return readyPair()
}

beforeEach(async () => {
  const { database: copy, filled } = await filledDatabase('pair-for-the-vendor', shopWithReadyPair)
  database = copy
  visitId = filled.heads[0]?.visitId ?? ''
  mateId = filled.heads[1]?.visitId ?? ''
  pairId = filled.heads[0]?.pairId ?? ''
})

const send = (over: object = {}, actor: Actor = machinist, moment = at(monday)) =>
  sendOutside(
    actor,
    sendOutsideSchema.parse({
      vendorId,
      scope: ['angle-cut', 'seat-work'],
      heads: [{ visitId, angleIn: '', flatIn: '', comesWith: '' }],
      finishesToSize: false,
      instructions: '',
      freight: '',
      tracking: '',
      promisedOn: '',
      ...over,
    }),
    moment,
  )

const receive = (orderId: string, confirmed: StepId[], over: object = {}, id = visitId) =>
  receiveOutside(
    machinist,
    receiveOutsideSchema.parse({
      orderId,
      heads: [{ visitId: id, confirmed, seatsIn: true, marksTyped: '', marksRead: '', ...over }],
    }),
    at(day(5)),
  )

/** A step of the projection: what the stations and lists are drawn from. */
async function row(stepId: StepId, id = visitId) {
  const rows = await database.client.routeStep.findMany({ where: { visitId: id, stepId, orderKey: '' } })
  return rows[0] ? routeStepOf(rows[0]) : null
}
const order = (id: string) =>
  database.client.outsideOrder.findUniqueOrThrow({ where: { id }, include: { promises: true } })
const said = async (action: string) => (await database.client.auditEntry.findMany({ where: { action } })).length

it('no step is started on a head that is away', async () => {
  await send()
  const step = { stepId: 'seat-after' as const, occurrence: '', orderId: null }
  const before = await database.client.visitEvent.count()
  expect(await refusalOf(startStep(machinist, { visitId, step, seen: before + 1000 }, at(monday)))).toMatchObject({
    code: 'wrong-state',
    message: expect.stringContaining('is out at') as string,
  })
  expect(await database.client.visitEvent.count()).toBe(before)
})

describe('an angle cut that the customer has not accepted', () => {
  const why = 'He is at sea; his brother said go on.'
  const sendAngle = (id: string, actor: Actor, over: object = {}) =>
    send({ scope: ['angle-cut'], heads: [{ visitId: id, angleIn: '', flatIn: '', comesWith: '' }], ...over }, actor)

  it('does not go out: the refusal says how to go on, and a reason of anybody but the owner changes nothing', async () => {
    const job = await readyPair('angle-flat', false)
    const [left = '', right = ''] = job.heads.map((head) => head.visitId)
    const said = 'The customer has not accepted this cut yet (' + (job.heads[0]?.tag ?? '') + ').'
    const refusal = await refusalOf(sendAngle(left, machinist, { unacceptedWhy: why }))
    expect(refusal).toMatchObject({
      code: 'invalid',
      message: `${said} Record the yes first; only the owner sends it without.`,
    })
    expect(refusal.fields).toEqual({})
    expect(await refusalOf(sendAngle(left, owner))).toMatchObject({
      message: `${said} Record the yes first, or enter why it goes out without it.`,
      fields: { unacceptedWhy: expect.any(String) as string },
    })
    expect(await database.client.outsideOrder.count()).toBe(0)

    // The owner sends it with a reason, which the trail keeps.
    await sendAngle(left, owner, { unacceptedWhy: why })
    const kept = await database.client.auditEntry.findMany({ where: { action: 'plan.send-unaccepted' } })
    expect(kept.map(({ actorId, visitId: of, changes }) => [actorId, of, JSON.parse(changes)])).toEqual([
      [owner.personId, left, { shape: 1, value: { reason: why } }],
    ])
    const { lines } = await seeTrail(owner, { find: job.number, before: null })
    expect(lines.map(({ sentence }) => sentence).join()).toContain(why)

    // Accepted: anybody who sends heads sends the other one.
    await acceptNewest(job)
    await sendAngle(right, machinist)
    expect(await database.client.auditEntry.count({ where: { action: 'plan.send-unaccepted' } })).toBe(1)
  })

  it('is asked about again when the plan is changed after the yes; seat work alone is not asked about', async () => {
    const job = await readyPair('angle')
    const id = job.heads[0]?.visitId ?? ''
    await leaveMargin(
      owner,
      leaveMarginSchema.parse({ pairId: job.heads[0]?.pairId ?? '', seenVersion: 1 }),
      at(monday),
    )
    expect(await refusalOf(sendAngle(id, machinist))).toMatchObject({ code: 'invalid' })
    const { heads } = await seeSending(machinist, { visitIds: [id], redoOfId: null })
    expect(heads.map(({ accepted, unread }) => [accepted, unread])).toEqual([
      [false, false],
      [false, false],
    ])
    const other = await bookAnother({ ordered: ['seat-work'] })
    const seatsOf = other.heads[0]?.visitId ?? ''
    await workThrough(seatsOf, ['seat-work'])
    const seats = { scope: ['seat-work'], heads: [{ visitId: seatsOf, angleIn: '', flatIn: '', comesWith: '' }] }
    await expect(send(seats)).resolves.toMatchObject({ number: 'O-0001' })
  })

  it('is offered with its mate, which is said to be not measured as long as it is not', async () => {
    const job = await bookAnother({ ordered: ['angle-cut'], targetCc: '54.0' })
    const id = job.heads[0]?.visitId ?? ''
    const unread = async () =>
      (await seeSending(machinist, { visitIds: [id], redoOfId: null })).heads.map((head) => head.unread)
    expect(await unread()).toEqual([true, true])
    await workThrough(id, ['chambers'])
    expect(await unread()).toEqual([true, true])
    await workThrough(id, ['angle-cut'])
    expect(await unread()).toEqual([false, true])
  })
})

describe('an order at the vendor', () => {
  it('is sent first and accepted later, with the day given then; the first day of acceptance stands', async () => {
    const { orderId } = await send({ promisedOn: on(9) })
    expect((await order(orderId)).acceptedAt).toBeNull()
    const accept = acceptOrderSchema.parse({ orderId, version: 1, promisedOn: on(11), note: '' })
    await acceptOrder(machinist, accept, at(day(1)))
    expect(await order(orderId)).toMatchObject({ acceptedAt: day(1), promisedOn: on(11), version: 2 })
    const again = repromiseSchema.parse({ orderId, version: 2, promisedOn: on(14), note: 'spindle down' })
    await repromise(machinist, again, at(day(3)))
    const now = await order(orderId)
    expect(now).toMatchObject({ acceptedAt: day(1), promisedOn: on(14), version: 3 })
    expect(now.promises.map((promise) => promise.promisedOn).sort()).toEqual([on(9), on(11), on(14)])
    expect(await refusalOf(acceptOrder(machinist, accept, at(day(4))))).toMatchObject({ code: 'conflict' })
    expect(await order(orderId)).toEqual(now)
  })

  it('tells freight and tracking to all, and what it cost to counter and owner alone', async () => {
    const { orderId } = await send()
    const travel = { freight: 'carrier', tracking: 'OUT 1', returnTracking: 'BACK 2' }
    await changeOrder(machinist, changeOrderSchema.parse({ orderId, version: 1, ...travel }), at(monday))
    const cost = noteOutsideCostSchema.parse({ orderId, version: 2, cost: '125.50', freightCost: '18' })
    const before = await order(orderId)
    expect(await refusalOf(noteOutsideCost(machinist, cost, at(monday)))).toMatchObject({
      code: 'not-allowed',
    })
    expect(await order(orderId)).toEqual(before)
    await noteOutsideCost(counter, cost, at(monday))
    expect(await order(orderId)).toMatchObject({ ...travel, costMinor: 12550, freightMinor: 1800 })
    for (const actor of [counter, owner]) {
      expect((await seeOrder(actor, orderId)).cost).toEqual({ workMinor: 12550, freightMinor: 1800 })
    }
    const seen = await seeOrder(machinist, orderId)
    expect(seen).toMatchObject(travel)
    expect(seen).not.toHaveProperty('cost')
    expect(JSON.stringify([seen, await seeAway(machinist, monday)])).not.toMatch(/12550|1800|costMinor/)
  })

  it('may hold heads of several jobs, each with its own amounts, where the steps allow', async () => {
    const other = await readyPair()
    const heads = [visitId, mateId, ...other.heads.map((head) => head.visitId)]
    // Seat work and angle cut are ready on all four: Tarn Grinding has done neither yet.
    const { boxes } = await seeAway(machinist, monday)
    expect(boxes.find((box) => box.id === 'angle-cut')).toMatchObject({ vendor: null, full: true })
    const sending = await seeSending(machinist, { visitIds: heads.slice(1, 3), redoOfId: null })
    expect(sending.heads.map((head) => head.visitId).sort()).toEqual([...heads].sort())
    const lines = heads.map((id, place) => ({
      visitId: id,
      angleIn: place === 3 ? '0.050' : '',
      flatIn: '',
      comesWith: '',
    }))
    const { orderId } = await send({ heads: lines })
    const kept = await database.client.outsideOrderVisit.findMany({ where: { orderId } })
    expect(kept.map((line) => line.angleIn.toFixed(3)).sort()).toEqual(['0.050', '0.063', '0.063', '0.063'])
  })
})

describe('what came back', () => {
  it('is done as far as it was confirmed: at the arrival, later, and no longer once that is taken back', async () => {
    const { orderId } = await send()
    await receive(orderId, ['angle-cut'])
    expect(await row('angle-cut')).toMatchObject({
      state: 'done',
      byVendor: { vendor: 'Tarn Grinding', number: 'O-0001' },
    })
    expect((await row('seat-work'))?.state).toBe('to do')
    const step = { orderId, visitId, stepId: 'seat-work', confirmed: true, reason: '' }
    await confirmOutside(machinist, confirmOutsideSchema.parse(step), at(day(6)))
    expect((await row('seat-work'))?.state).toBe('done')
    expect(await refusalOf(confirmOutside(machinist, confirmOutsideSchema.parse(step), at(day(6))))).toMatchObject({
      code: 'wrong-state',
    })
    const back = { ...step, confirmed: false }
    expect(confirmOutsideSchema.safeParse(back).success).toBe(false)
    const taken = confirmOutsideSchema.parse({ ...back, reason: 'one seat was left' })
    await confirmOutside(machinist, taken, at(day(7)))
    expect((await row('seat-work'))?.state).not.toBe('done')
    expect([await said('outside-order.confirm'), await said('outside-order.unconfirm')]).toEqual([1, 1])
  })

  it('is not confirmed over work that was done here, nor out of scope', async () => {
    const { orderId } = await send({ scope: ['angle-cut'] })
    await receive(orderId, ['angle-cut'])
    const seats = { orderId, visitId, stepId: 'seat-work', confirmed: true, reason: '' }
    expect(await refusalOf(confirmOutside(machinist, confirmOutsideSchema.parse(seats), at(day(6))))).toMatchObject({
      code: 'wrong-state',
      message: 'Seat work was not in this order.',
    })
  })

  it('can be rejected at the arrival and sent out again at the vendor’s cost', async () => {
    const { orderId } = await send()
    await receive(orderId, [], { rejectedWhy: 'two seats out of round', redoCost: 'vendor' })
    for (const stepId of ['angle-cut', 'seat-work'] as const) {
      expect(await row(stepId)).toMatchObject({
        state: 'do again',
        reason: { code: 'rejected', why: 'two seats out of round' },
      })
    }
    const { redo, heads } = await seeSending(machinist, { visitIds: [visitId], redoOfId: orderId })
    expect(redo).toMatchObject({ number: 'O-0001', vendorId, scope: ['angle-cut', 'seat-work'], cost: 'vendor' })
    // Nobody has measured what the rejected cut took.
    expect(heads).toMatchObject([{ visitId, unmeasured: true }])
    const mate = [{ visitId: mateId, angleIn: '', flatIn: '', comesWith: '' }]
    const over = { redoOfId: orderId, redoCost: 'vendor' }
    expect(sendOutsideSchema.safeParse({ ...over, redoCost: '' }).success).toBe(false)
    expect(await refusalOf(send({ ...over, heads: mate }))).toMatchObject({ code: 'not-found' })
    const again = await send(over, machinist, at(day(6)))
    expect(await seeOrder(machinist, again.orderId)).toMatchObject({ redoOf: { number: 'O-0001', cost: 'vendor' } })
    expect((await seeOrder(machinist, orderId)).heads).toMatchObject([
      {
        rejected: { why: 'two seats out of round', cost: 'vendor' },
        redo: { number: again.number },
      },
    ])
    await receive(again.orderId, ['angle-cut', 'seat-work'])
    expect(await row('seat-work')).toMatchObject({
      state: 'done',
      byVendor: { vendor: 'Tarn Grinding', number: again.number },
    })
  })

  it('is received at its arrival check, by what that says of the order; then there is nothing to receive', async () => {
    const { orderId, number } = await send()
    const check = { stepId: 'arrival-count', occurrence: '', orderId } as const
    const receiveAt = async () => (await seeStep(machinist, visitId, check, day(5))).receive
    const told = await receiveAt()
    expect(told).toEqual({
      orderId,
      number,
      vendor: 'Tarn Grinding',
      scope: [
        { id: 'angle-cut', label: 'Angle cut' },
        { id: 'seat-work', label: expect.any(String) as string },
      ],
    })
    const elsewhere = { stepId: 'flat-cut', occurrence: '', orderId: null } as const
    expect((await seeStep(machinist, visitId, elsewhere, day(5))).receive).toBeNull()
    await receive(told?.orderId ?? '', ['angle-cut'])
    expect(await receiveAt()).toBeNull()
    expect((await seeQueue(machinist, 'front-desk', 1, day(5))).ready).toContainEqual(
      expect.objectContaining({ visitId, step: expect.objectContaining(check) as object }),
    )
  })

  it('can be rejected afterwards, once; what was out is refused', async () => {
    const { orderId } = await send()
    const reject = rejectOutsideSchema.parse({ orderId, visitId, why: 'porous', redoCost: 'shop' })
    expect(await refusalOf(rejectOutside(machinist, reject, at(day(5))))).toMatchObject({
      code: 'wrong-state',
    })
    await receive(orderId, ['angle-cut', 'seat-work'])
    expect((await row('seat-work'))?.state).toBe('done')
    await rejectOutside(machinist, reject, at(day(6)))
    expect(await row('seat-work')).toMatchObject({ state: 'do again', reason: { code: 'rejected', why: 'porous' } })
    expect(await refusalOf(rejectOutside(machinist, reject, at(day(6))))).toMatchObject({ code: 'conflict' })
    expect(await said('outside-order.reject')).toBe(1)
  })

  it('rejected work is told at every station until what is done again is checked in; the day of its return is known', async () => {
    const { orderId, number } = await send()
    await receive(orderId, ['angle-cut', 'seat-work'])
    const lines = async (list: 'ready' | 'today' | 'later', now = day(6)) =>
      (await seeQueue(machinist, 'deck-mill', 1, now))[list].filter((line) => line.visitId === visitId)
    const marksOf = async (list: 'later') => (await lines(list)).flatMap(({ marks }) => marks)
    await rejectOutside(
      machinist,
      rejectOutsideSchema.parse({ orderId, visitId, why: 'porous', redoCost: 'vendor' }),
      at(day(6)),
    )
    const order = { vendor: 'Tarn Grinding', number }
    const told = [{ code: 'rework', rework: { from: 'vendor', order, text: 'porous' } }]
    expect(await marksOf('later')).toEqual(told)
    const again = await send(
      { redoOfId: orderId, redoCost: 'vendor', promisedOn: on(9), instructions: 'weld the pores' },
      machinist,
      at(day(7)),
    )
    expect(await marksOf('later')).toEqual(told)
    // The mill comes after the arrival check, which is not started: not today, not even on the day of the return.
    const listsOn = async (now: Date) => [(await lines('today', now)).length, (await lines('later', now)).length]
    expect(await listsOn(day(9))).toEqual([0, 1])
    const check = (now: Date) => seeQueue(machinist, 'front-desk', 1, now)
    const comes = async (now: Date) => (await check(now)).today.map((line) => [line.visitId, line.step.stepId])
    expect(await comes(day(8))).toEqual([])
    expect(await comes(day(9))).toContainEqual([visitId, 'arrival-count'])
    await receiveOutside(
      machinist,
      receiveOutsideSchema.parse({
        orderId: again.orderId,
        heads: [{ visitId, confirmed: ['angle-cut', 'seat-work'], seatsIn: true, marksTyped: '', marksRead: '' }],
      }),
      at(day(9)),
    )
    expect(await marksOf('later')).toEqual(told)
    await workThrough(visitId, ['angle-cut', 'flat-cut'])
    expect(await marksOf('later')).toEqual([])
    expect(await lines('later')).toHaveLength(1)
  })

  it('an angle that the corners show short is not done, and says so on the order', async () => {
    const { orderId } = await send({ scope: ['angle-cut'] })
    await receive(orderId, ['angle-cut'])
    // 50 thou of the 63: square to the new deck 4.500·cos(atan(0.050/7)) = 4.4999 and 4.450·cos = 4.4499.
    await workThrough(visitId, ['angle-cut', 'flat-cut'], (step, kind, point) =>
      step.stepId === 'arrival-figures' && kind === 'thickness'
        ? point.startsWith('intake')
          ? '4.4999'
          : '4.4499'
        : undefined,
    )
    expect(await row('angle-cut')).toMatchObject({
      state: 'do again',
      // The corners are typed to a tenth of a thou: so well is the difference known.
      reason: { code: 'angle-short', shortIn: expect.closeTo(0.013, 4) },
    })
    expect((await seeOrder(machinist, orderId)).heads[0]?.short).toContain('0.013 in short')
    // The next vendor is asked for the rest: 63 − 50 = 13 thou.
    const { heads } = await seeSending(machinist, { visitIds: [visitId], redoOfId: null })
    expect(heads.find((head) => head.visitId === visitId)?.angleIn).toBeCloseTo(0.013, 3)
  })
})

describe('an angle cut that leaves nothing for us', () => {
  it('is refused, and planned again with a flat part worth the margin it goes', async () => {
    const job = await readyPair('angle')
    const [head] = job.heads
    const bare = [{ visitId: head?.visitId ?? '', angleIn: '', flatIn: '', comesWith: '' }]
    const over = { scope: ['angle-cut'], heads: bare }
    expect(await refusalOf(send(over))).toMatchObject({ code: 'wrong-state' })
    await leaveMargin(machinist, { pairId: head?.pairId ?? '', seenVersion: 1 }, at(monday))
    const plans = await database.client.planVersion.findMany({
      where: { pairId: head?.pairId },
      include: { acceptances: true },
      orderBy: { number: 'desc' },
    })
    expect(plans.map(({ number, kind }) => [number, kind])).toEqual([
      [2, 'angle-flat'],
      [1, 'angle'],
    ])
    expect(plans[0]?.acceptances).toEqual([])
    // A margin of 1 cc at 6 thou per cc.
    expect(planResults.read(plans[0]?.results ?? '', '').flatIn).toBeCloseTo(0.006, 6)
    await workThrough(head?.visitId ?? '', ['angle-cut', 'seat-work'])
    await acceptNewest(job)
    await send(over)
    // The first plan's pair is untouched.
    expect(await database.client.planVersion.count({ where: { pairId } })).toBe(1)
  })
})

describe('Away', () => {
  it('says whom to call and why; customers’ numbers to those who call them', async () => {
    // Booked for 20 March; 12 March + 9 days is the 21st or so: past it.
    const { orderId, number } = await send({ promisedOn: '2026-03-25' })
    await send({ heads: [{ visitId: mateId, angleIn: '', flatIn: '', comesWith: '' }] })
    const reasons = async (now: Date, actor: Actor = counter) =>
      (await seeAway(actor, now)).calls.map((call) => [call.who, call.number, ...call.reasons])
    const soon = await reasons(day(1))
    expect(soon).toContainEqual(['vendor', 'O-0002', 'no day promised'])
    expect(soon).toContainEqual(['customer', number, expect.stringContaining('promised for')])
    const later = await reasons(day(2))
    expect(later).toContainEqual(['vendor', number, 'not accepted after 2 days'])
    const accept = acceptOrderSchema.parse({ orderId, version: 1, promisedOn: '', note: '' })
    await acceptOrder(machinist, accept, at(day(2)))
    expect((await reasons(new Date('2026-03-24T18:00:00Z')))[0]).toEqual(['vendor', number, 'due tomorrow'])
    expect((await reasons(new Date('2026-03-28T18:00:00Z')))[0]).toEqual(['vendor', number, 'late by 3 days'])
    const phones = async (actor: Actor) => (await seeAway(actor, day(1))).calls.map((call) => [call.who, call.phone])
    expect(await phones(counter)).toContainEqual(['customer', '(555) 010-4477'])
    expect(await phones(machinist)).toContainEqual(['customer', undefined])
    expect(await phones(machinist)).toContainEqual(['vendor', '555-0142'])
  })

  it('sorts by the promise at risk, shows which head is back, and fills a box', async () => {
    const other = await readyPair()
    const late = await send({ promisedOn: '2026-03-25' })
    const early = await send({
      heads: other.heads.map((head) => ({ visitId: head.visitId, angleIn: '', flatIn: '', comesWith: '' })),
      promisedOn: on(2),
    })
    await receive(early.orderId, ['angle-cut'], {}, other.heads[0]?.visitId)
    const away = await seeAway(machinist, day(6))
    expect(away.byPromise.map((line) => line.number)).toEqual([late.number, early.number])
    expect(away.byPromise[1]?.heads.map((head) => head.back)).toEqual([true, false])
    // Six days out, two promised: four late. The one that came back took five.
    const usual = { count: 1, medianDays: 5, nineOfTenDays: 5 }
    expect(away.byPromise[1]).toMatchObject({ daysOut: 6, promisedDays: 2, daysLate: 4, usual })
    // The mate's angle cut is ready; Tarn Grinding did the last one and waits for four.
    expect(away.boxes.find((box) => box.id === 'angle-cut')).toMatchObject({
      vendor: 'Tarn Grinding',
      boxHeads: 4,
      full: false,
      heads: [{ visitId: mateId }],
    })
    expect(away.vendors[0]).toMatchObject({ daysTaken: [5], turnaround: { count: 1, medianDays: 5 } })
  })

  it('asks the database eight times at the most, and no oftener however much is out', async () => {
    const look = () => Promise.all([seeAway(counter, monday), newestChange()])
    await send()
    const asks = await asksOf(database.client, look)
    expect(asks).toBeGreaterThan(5)
    expect(asks).toBeLessThanOrEqual(8)
    const one = (await selectsOf(look)).length
    await send({ heads: [{ visitId: mateId, angleIn: '', flatIn: '', comesWith: '' }] })
    expect(await asksOf(database.client, look)).toBeLessThanOrEqual(8)
    // Each brings its relations by a statement a relation, none of which is sent once a row.
    expect(await selectsOf(look)).toHaveLength(one)
  })
})
