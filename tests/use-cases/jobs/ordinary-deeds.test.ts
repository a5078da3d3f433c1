import { beforeEach, describe, expect, it, vi } from 'vitest'
import { bookJobSchema } from '@/lib/schemas/job'
import { answerFindingSchema, changeAnswerSchema } from '@/lib/schemas/finding'
import { addHeadSchema } from '@/lib/schemas/ordinary'
import { answerFinding } from '@/lib/use-cases/findings/answer-finding'
import { changeAnswer } from '@/lib/use-cases/findings/change-answer'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { seeFinding } from '@/lib/use-cases/findings/see-finding'
import { undoHandOver } from '@/lib/use-cases/hand-over/undo-hand-over'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { addHead } from '@/lib/use-cases/jobs/add-head'
import { bookJob } from '@/lib/use-cases/jobs/book-job'
import { cancelJob } from '@/lib/use-cases/jobs/cancel-job'
import { changeJob } from '@/lib/use-cases/jobs/change-job'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { startBookingAgain, startBookingFor, startComeback } from '@/lib/use-cases/jobs/start-again'
import { takeOffHead } from '@/lib/use-cases/jobs/take-off-head'
import { writeInvoice } from '@/lib/use-cases/money/write-invoice'
import { waiveGap } from '@/lib/use-cases/visits/waive-gap'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { handOverSchema } from '@/lib/schemas/release'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
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
  owner,
  refusalOf,
} from './counter-shop'

let database: TestDatabase
beforeEach(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'only for these tests, long enough')
  database = await testDatabase()
  await openShop(database)
})

const see = (number: string) => seeJob(owner, { number, now: monday })
const wheres = async (number: string) => (await see(number)).heads.map(({ whereabouts }) => whereabouts)
const priced = () =>
  book({
    prices: [{ text: 'Flat cut', quantity: '2', unitPrice: '95', tax: '', perHead: true }],
    deposit: '50',
    engine: { ...booking().engine, layout: 'v' },
    note: 'Race in May.',
    classMinCc: '57',
  })

/** The head is here: its check in is behind it. */
const checkIn = (visitId: string) =>
  waiveGap(owner, { visitId, gap: 'step:check-in||', reason: 'looked at on the way in' }, at(monday))

describe('a job that is cancelled', () => {
  it('returns what is here as it is, takes off what never came, removes its prices and says what is owed back', async () => {
    const job = await priced()
    await checkIn(job.heads[0]?.visitId ?? '')
    const { version } = await see(job.number)
    const done = await cancelJob(
      counter,
      { jobId: job.jobId, version, reason: 'engine sold', removePrices: true },
      at(monday),
    )
    expect(done).toEqual({ returned: ['T-0401'], takenOff: ['T-0402'], owedBackMinor: 5_000 })
    expect(await wheres(job.number)).toEqual(['returned as is', 'taken off'])
    const seen = await see(job.number)
    expect(seen.cancelled).toEqual({ at: monday, reason: 'engine sold' })
    expect(seen.account?.dueMinor).toBe(-5_000)
    expect([seen.isOpen, seen.daysLeft]).toEqual([false, null])
    const [entry] = await database.client.auditEntry.findMany({ where: { action: 'job.cancel' } })
    expect(entry?.changes).toContain('engine sold')
  })

  it('may keep its prices, and never touches an invoice', async () => {
    const job = await priced()
    await writeInvoice(counter, { jobId: job.jobId, seenMinor: 19_000 }, at(monday))
    const { version } = await see(job.number)
    const input = { jobId: job.jobId, version, reason: 'engine sold', removePrices: true }
    expect((await cancelJob(counter, input, at(monday))).owedBackMinor).toBe(0)
    // 190.00 invoiced, 50.00 paid: 140.00 is still to pay until a credit note says otherwise.
    expect((await see(job.number)).account?.dueMinor).toBe(14_000)
    expect((await refusalOf(cancelJob(counter, input, at(monday)))).code).toBe('wrong-state')
  })

  it('is a conflict when the job changed meanwhile, and not a machinist’s', async () => {
    const { jobId } = await priced()
    const input = { jobId, version: 1, reason: 'engine sold', removePrices: false }
    expect((await refusalOf(cancelJob(machinist, input, at(monday)))).code).toBe('not-allowed')
    await changeJob(
      counter,
      { jobId, version: 1, promiseOn: '2026-03-20', urgent: true, note: '', partsPlace: '', reason: '', visits: [] },
      at(monday),
    )
    expect((await refusalOf(cancelJob(counter, input, at(monday)))).code).toBe('conflict')
    expect(await database.client.visit.count({ where: { takenOffAt: { not: null } } })).toBe(0)
  })
})

describe('heads of a job under way', () => {
  it('one more comes with the work and target of its casting, on the same plan', async () => {
    const job = await priced()
    const input = addHeadSchema.parse({ jobId: job.jobId, heads: [head({ side: 'spare' })], reason: 'a third head' })
    const added = await addHead(counter, input, at(monday))
    expect(added).toMatchObject({ tag: 'T-0403', pairId: job.heads[0]?.pairId })
    const visit = await database.client.visit.findUniqueOrThrow({
      where: { id: added.visitId },
      include: { ordered: true },
    })
    expect(visit).toMatchObject({ position: 3, targetCc: 58, side: 'spare' })
    expect(visit.ordered.map(({ work }) => work).sort()).toEqual(
      booking()
        .ordered.map(({ work }) => work)
        .sort(),
    )
    const wrong = addHeadSchema.parse({ ...input, heads: [head({ castingId: 'c-nowhere' })] })
    expect((await refusalOf(addHead(counter, wrong, at(monday)))).fields).toHaveProperty('heads.0.castingId')
  })

  it('one with the stamp of a head on record is added only when it is said which it is', async () => {
    const before = await book({ heads: [head({ stamp: 'KX 7' })] })
    const headId = before.heads[0]?.headId ?? ''
    const job = await priced()
    const typed = { jobId: job.jobId, heads: [head({ stamp: 'kx-7' })], reason: 'a third head' }
    const asked = await refusalOf(addHead(counter, addHeadSchema.parse(typed), at(monday)))
    expect(asked.alike).toEqual({ customers: [], heads: [headId] })
    expect(await database.client.visit.count({ where: { jobId: job.jobId } })).toBe(2)
    // Yes: it is still on the other job. Once it has left, it is taken up with its history.
    const same = addHeadSchema.parse({ ...typed, heads: [head({ headId })] })
    expect((await refusalOf(addHead(counter, same, at(monday)))).fields).toHaveProperty('heads.0.headId')
    await returnAsIs(counter, { visitId: before.heads[0]?.visitId ?? '', reason: 'not worth it' }, at(monday))
    expect((await addHead(counter, same, at(monday))).headId).toBe(headId)
    // No: it is another head, and the trail keeps the answer.
    const no = addHeadSchema.parse({ ...typed, notThese: { customers: [], heads: [headId] } })
    expect((await addHead(counter, no, at(monday))).headId).not.toBe(headId)
    const added = await database.client.auditEntry.findMany({
      where: { action: 'job.add-head' },
      orderBy: { seq: 'asc' },
    })
    expect(added.map(({ changes }) => changes.includes(headId))).toEqual([false, true])
  })

  it('one is taken off with the reason; the last one is not', async () => {
    const { jobId, number, heads } = await priced()
    const [first = '', second = ''] = heads.map(({ visitId }) => visitId)
    await takeOffHead(counter, { jobId, visitId: second, reason: 'cracked, stays at home' }, at(monday))
    expect(await wheres(number)).toEqual(['expected', 'taken off'])
    expect((await see(number)).heads[1]?.more).toContain('cracked, stays at home')
    const last = takeOffHead(counter, { jobId, visitId: first, reason: 'too' }, at(monday))
    expect((await refusalOf(last)).message).toContain('Cancel the job')
    // It may be booked again at once.
    const again = heads[1]?.headId ?? ''
    const next = await book({ heads: [head({ headId: again })] })
    expect(next.heads[0]?.headId).toBe(again)
  })

  it('promise and target change with a reason, which the trail has', async () => {
    const { jobId } = await priced()
    const change = { jobId, version: 1, promiseOn: '2026-03-27', urgent: false, note: 'Race in May.', partsPlace: '' }
    const refused = await refusalOf(changeJob(counter, { ...change, reason: '', visits: [] }, at(monday)))
    expect(refused.fields).toHaveProperty('reason')
    await changeJob(counter, { ...change, reason: 'vendor is late', visits: [] }, at(monday))
    const [entry] = await database.client.auditEntry.findMany({ where: { action: 'job.change' } })
    expect(entry?.changes).toContain('vendor is late')
  })
})

describe('an answer that is changed', () => {
  async function answered() {
    const job = await priced()
    const visitId = job.heads[0]?.visitId ?? ''
    const { findingId } = await reportFinding(machinist, { visitId, stepId: null, what: 'bent guide' }, at(monday))
    const terms = { findingId, price: '40', tax: '', addsWork: ['guides'], how: 'by phone', answeredBy: 'Tamsin Rook' }
    await answerFinding(counter, answerFindingSchema.parse({ ...terms, version: 1, answer: 'yes' }), at(monday))
    return { job, visitId, terms }
  }
  const openWork = async (visitId: string) =>
    (await database.client.orderedLine.findMany({ where: { visitId, endedAt: null } })).map(({ work }) => work)

  it('from yes to no takes work and price off, and back again; the first one stays visible', async () => {
    const { job, visitId, terms } = await answered()
    expect(await openWork(visitId)).toContain('guides')
    expect((await see(job.number)).account?.totalMinor).toBe(23_000)
    const no = changeAnswerSchema.parse({ ...terms, version: 2, answer: 'no', reason: 'found a new guide' })
    await changeAnswer(counter, no, at(monday))
    expect(await openWork(visitId)).not.toContain('guides')
    expect((await see(job.number)).account?.totalMinor).toBe(19_000)
    const seen = await seeFinding(counter, { id: terms.findingId, now: monday })
    expect(seen.answer).toBe('no')
    expect(seen.earlier).toMatchObject([{ answer: 'yes', by: 'Tamsin Rook', reason: 'found a new guide' }])
    const yes = changeAnswerSchema.parse({ ...terms, version: seen.version, answer: 'yes', reason: 'no luck' })
    await changeAnswer(counter, yes, at(monday))
    expect(await openWork(visitId)).toContain('guides')
    expect((await see(job.number)).account?.totalMinor).toBe(23_000)
    expect(
      (await seeFinding(counter, { id: terms.findingId, now: monday })).earlier.map(({ answer }) => answer),
    ).toEqual(['yes', 'no'])
  })

  it('is refused while its price is on an invoice, when nothing was answered, and on a stale page', async () => {
    const { job, terms } = await answered()
    const no = changeAnswerSchema.parse({ ...terms, version: 1, answer: 'no', reason: 'why' })
    expect((await refusalOf(changeAnswer(counter, no, at(monday)))).code).toBe('conflict')
    await writeInvoice(counter, { jobId: job.jobId, seenMinor: 23_000 }, at(monday))
    const late = await refusalOf(changeAnswer(counter, { ...no, version: 2 }, at(monday)))
    expect(late.message).toContain('credit note')
    expect((await see(job.number)).account?.totalMinor).toBe(23_000)
  })
})

describe('a hand-over', () => {
  async function gone() {
    const job = await book({ heads: [head()] })
    const visitId = job.heads[0]?.visitId ?? ''
    await returnAsIs(counter, { visitId, reason: 'not worth it' }, at(monday))
    const leaving = { visitId, side: 'left', partsBack: '' }
    const input = handOverSchema.parse({
      ...{ jobId: job.jobId, takenBy: 'Tamsin Rook', note: '', unpaidReason: '', heads: [leaving] },
      payment: { amount: '', method: 'cash', how: '', confirmed: false },
    })
    await handOver(counter, input, at(monday))
    return { job, visitId, again: () => handOver(counter, input, at(monday)) }
  }

  it('is taken back by the owner on the same day, and may be made again', async () => {
    const { job, visitId, again } = await gone()
    const undo = { visitId, reason: 'wrong head' }
    expect((await refusalOf(undoHandOver(counter, undo, at(monday)))).code).toBe('not-allowed')
    await undoHandOver(owner, undo, at(new Date('2026-03-03T05:30:00Z'))) // 23:30 of the same day in Chicago
    expect((await see(job.number)).heads[0]).toMatchObject({ gone: false, mayGo: true })
    const [entry] = await database.client.auditEntry.findMany({ where: { action: 'visit.undo-hand-over' } })
    expect(entry?.changes).toContain('wrong head')
    expect(await database.client.reading.count({ where: { kind: 'taken-by', text: 'Tamsin Rook' } })).toBe(1)
    expect((await refusalOf(undoHandOver(owner, undo, at(monday)))).code).toBe('wrong-state')
    await again()
    expect((await see(job.number)).heads[0]?.gone).toBe(true)
  })

  it('stands from the next day on, and once the head is on another job', async () => {
    const { job, visitId } = await gone()
    const nextDay = new Date('2026-03-03T06:30:00Z') // 0:30 of the next day in Chicago
    expect((await refusalOf(undoHandOver(owner, { visitId, reason: 'x' }, at(nextDay)))).message).toContain('same day')
    await book({ heads: [head({ headId: job.heads[0]?.headId ?? '' })] }, at(new Date(monday.getTime() + 60_000)))
    const refused = await refusalOf(undoHandOver(owner, { visitId, reason: 'x' }, at(monday)))
    expect(refused.message).toContain('26-0002')
  })
})

it('a booking from a customer’s page begins with that customer, of a merge with the one that stayed', async () => {
  const job = await priced()
  const { customerId } = await database.client.job.findUniqueOrThrow({ where: { id: job.jobId } })
  const form = await startBookingFor(counter, customerId)
  expect(form.customer).toMatchObject({ id: customerId, name: 'Tamsin Rook', phone: '(555) 010-4477' })
  expect([form.heads.length, form.prices]).toEqual([1, []])
  await database.client.customer.create({ data: { id: 'k-old', createdAt: monday, mergedIntoId: customerId } })
  const contact = await database.client.customerContact.findUniqueOrThrow({ where: { customerId } })
  await database.client.customerContact.create({ data: { ...contact, customerId: 'k-old', name: 'T. Rook' } })
  expect((await startBookingFor(counter, 'k-old')).customer.id).toBe(customerId)
  await database.client.customerContact.update({ where: { customerId }, data: { blankedAt: monday } })
  expect((await refusalOf(startBookingFor(counter, customerId))).code).toBe('not-found')
  expect((await refusalOf(startBookingFor(machinist, customerId))).code).toBe('not-allowed')
})

describe('booked again', () => {
  it('the same job begins with its customer, engine, work, limits, prices and heads that have left', async () => {
    const job = await priced()
    await returnAsIs(counter, { visitId: job.heads[0]?.visitId ?? '', reason: 'later' }, at(monday))
    const form = await startBookingAgain(counter, job.number)
    const first = await database.client.job.findUniqueOrThrow({ where: { id: job.jobId } })
    expect(form.customer).toMatchObject({ id: first.customerId, name: 'Tamsin Rook' })
    expect(form).toMatchObject({
      targetCc: '58.0 cc',
      classMinCc: '57 cc',
      note: 'Race in May.',
      promiseOn: '',
      deposit: '',
    })
    expect(form.engine.layout).toBe('v')
    expect(form.ordered.map(({ work }) => work).sort()).toEqual(
      booking()
        .ordered.map(({ work }) => work)
        .sort(),
    )
    expect(form.prices).toEqual([{ text: 'Flat cut', quantity: '2', unitPrice: '95.00', tax: '', perHead: true }])
    expect(form.heads).toMatchObject([
      { headId: job.heads[0]?.headId, castingId: casting, side: 'left', stamp: 'TR 1', tag: 'T-0401' },
      { headId: '', castingId: casting, side: 'right' },
    ])
    const next = await bookJob(counter, bookJobSchema.parse(form), at(monday))
    expect(next.heads[0]?.headId).toBe(job.heads[0]?.headId)
    expect((await refusalOf(startBookingAgain(counter, '99-0001'))).code).toBe('not-found')
  })

  it('a comeback begins with the head, marked as one, and no work', async () => {
    const job = await priced()
    const visitId = job.heads[0]?.visitId ?? ''
    await returnAsIs(counter, { visitId, reason: 'later' }, at(monday))
    const form = await startComeback(counter, visitId)
    expect(form.heads).toMatchObject([{ headId: job.heads[0]?.headId, comeback: true }])
    expect([form.ordered, form.prices]).toEqual([[], []])
    const next = await bookJob(counter, bookJobSchema.parse(form), at(monday))
    const visit = await database.client.visit.findUniqueOrThrow({ where: { id: next.heads[0]?.visitId ?? '' } })
    expect(visit.comebackOfId).toBe(visitId)
  })
})
