import { describe, expect, it } from 'vitest'
import { addPriceLineSchema, logCallSchema, takePaymentSchema } from '@/lib/schemas/job'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { testDatabase } from '@/tests/setup/database'
import { at, book, counter, machinist, monday, openShop, refusalOf } from './counter-shop'

async function pricedJob() {
  const database = await testDatabase()
  await openShop(database)
  const { jobId } = await book({
    prices: [{ text: 'Flat cut, pair', quantity: '2', unitPrice: '120', tax: '10' }],
    deposit: '100',
    depositHow: 'card',
  })
  const see = (actor = counter) => seeJob(actor, { number: '26-0001', now: monday })
  return { client: database.client, jobId, see }
}

const line = (jobId: string, over: object = {}) =>
  addPriceLineSchema.parse({ jobId, text: 'Leak test', quantity: '1', unitPrice: '50', tax: '', ...over })
const payment = (jobId: string, over: object) =>
  takePaymentSchema.parse({ jobId, kind: 'payment', amount: '50', method: 'cash', how: '', confirmed: false, ...over })

describe('prices and payments', () => {
  it('add up to a balance', async () => {
    const { jobId, see } = await pricedJob()
    const { id } = await addPriceLine(counter, line(jobId), at(monday))
    await takePayment(counter, payment(jobId, { amount: '50' }), at(monday))
    await takePayment(counter, payment(jobId, { kind: 'refund', amount: '20' }), at(monday))
    // By hand: 2 × 120.00 + 50.00 = 290.00; tax 10 % of 240.00 = 24.00; paid 100 + 50 − 20 = 130.00; due 184.00.
    expect((await see()).account).toMatchObject({
      netMinor: 29000,
      taxMinor: 2400,
      totalMinor: 31400,
      paidMinor: 13000,
      dueMinor: 18400,
    })
    await endPriceLine(counter, { jobId, lineId: id, why: 'typed twice' }, at(monday))
    expect((await see()).account).toMatchObject({ totalMinor: 26400, dueMinor: 13400 })
    expect(await refusalOf(endPriceLine(counter, { jobId, lineId: id, why: 'typed twice' }, at(monday)))).toMatchObject(
      {
        code: 'not-found',
      },
    )
  })

  it('keep a line that was taken off, and say who did it', async () => {
    const { client, jobId } = await pricedJob()
    const { id } = await addPriceLine(counter, line(jobId), at(monday))
    await endPriceLine(counter, { jobId, lineId: id, why: 'typed twice' }, at(monday))
    expect(await client.priceLine.findUnique({ where: { id } })).toMatchObject({ endedAt: monday })
    expect(
      await client.auditEntry.count({
        where: { action: 'price-line.remove', subjectId: id, actorId: counter.personId },
      }),
    ).toBe(1)
  })

  it('do not reach a line of another job', async () => {
    const { client, jobId } = await pricedJob()
    const other = await book()
    const { id } = await addPriceLine(counter, line(jobId), at(monday))
    expect(
      await refusalOf(endPriceLine(counter, { jobId: other.jobId, lineId: id, why: 'typed twice' }, at(monday))),
    ).toMatchObject({
      code: 'not-found',
    })
    expect(await client.priceLine.findUnique({ where: { id } })).toMatchObject({ endedAt: null })
  })

  it('are taken once for one operation', async () => {
    const { client, jobId } = await pricedJob()
    await takePayment(counter, payment(jobId, {}), at(monday, 'op'))
    await takePayment(counter, payment(jobId, {}), at(monday, 'op'))
    expect(await client.payment.count({ where: { kind: 'payment' } })).toBe(1)
  })

  it('are not in what a machinist sees, and not a machinist’s to change', async () => {
    const { client, jobId, see } = await pricedJob()
    const seen = await see(machinist)
    expect(seen.account).toBeNull()
    expect(JSON.stringify(seen)).not.toMatch(/Flat cut, pair|12000|minor/i)
    expect(JSON.stringify(await see())).toMatch(/Flat cut, pair/)
    const [price] = await client.priceLine.findMany()
    const attempts = [
      addPriceLine(machinist, line(jobId), at(monday)),
      endPriceLine(machinist, { jobId, lineId: price?.id ?? '', why: 'x' }, at(monday)),
      takePayment(machinist, payment(jobId, {}), at(monday)),
      logCall(machinist, { jobId, text: 'x' }, at(monday)),
    ]
    for (const attempt of attempts) expect(await refusalOf(attempt)).toMatchObject({ code: 'not-allowed' })
    expect(await client.priceLine.count({ where: { endedAt: null } })).toBe(1)
    expect(await client.payment.count()).toBe(1)
    expect(await client.callEntry.count()).toBe(0)
  })

  it('refuse an amount of nothing and too many decimals', async () => {
    const { jobId } = await pricedJob()
    expect((await refusalOf(takePayment(counter, payment(jobId, { amount: '0' }), at(monday)))).fields).toHaveProperty(
      'amount',
    )
    expect(
      (await refusalOf(takePayment(counter, payment(jobId, { amount: '1.0055' }), at(monday)))).fields,
    ).toHaveProperty('amount')
  })
})

describe('the call log', () => {
  it('keeps who said what and when; the audit keeps only that there was a call', async () => {
    const { client, jobId, see } = await pricedJob()
    await logCall(counter, logCallSchema.parse({ jobId, text: 'Tamsin asks for 57.' }), at(monday))
    expect((await see()).calls).toMatchObject([{ by: counter.name, at: monday, text: 'Tamsin asks for 57.' }])
    const entry = await client.auditEntry.findFirstOrThrow({ where: { action: 'call.log' } })
    expect(entry.changes).not.toContain('Tamsin')
  })
})

describe('a job that does not exist', () => {
  it('is not found', async () => {
    const { see } = await pricedJob()
    expect((await see()).number).toBe('26-0001')
    expect(await refusalOf(seeJob(counter, { number: '26-9999', now: monday }))).toMatchObject({
      code: 'not-found',
    })
    expect(await refusalOf(takePayment(counter, payment('nowhere', {}), at(monday)))).toMatchObject({
      code: 'not-found',
    })
  })
})
