import { beforeAll, describe, expect, it, vi } from 'vitest'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { seeHandOver } from '@/lib/use-cases/hand-over/see-hand-over'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { seeUnpaid } from '@/lib/use-cases/money/see-unpaid'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { handOverSchema } from '@/lib/schemas/release'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { testDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { account, bookPriced, credit, discount, invoice, pay, price } from './account-shop'

vi.setConfig({ testTimeout: 120_000 })

/** A job with everything money has: 264.00 + 54.13 − 22.00 = 296.13; a note of 44.00; 50.00 and 20.00 paid. */
let job: BookedJob
beforeAll(async () => {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  await openShop(await testDatabase())
  const prices = [{ text: 'Both decks', quantity: '2', unitPrice: '120', tax: '10' }]
  job = await bookPriced({ prices, deposit: '50', depositMethod: 'card', depositHow: 'slip 77', pricesOnLink: true })
  await price(job.jobId, 'Gaskets and studs', '50', '8.25')
  await discount(job.jobId, '20', '10', 'old friend')
  const { paperId } = await invoice(job.jobId)
  await credit(paperId, ['40', '', ''], 'scratched in our shop')
  await pay(job.jobId, '20', { method: 'check', how: 'no. 118' })
}, 120_000)

const said =
  /Both decks|Gaskets|old friend|scratched|slip 77|no\. 118|INV-|CN-|R-000|264|29613|26400|12000|balance|receipt/i

describe('a machinist', () => {
  it('reads nothing of a job’s money, field by field', async () => {
    const headId = job.heads[0]?.headId ?? ''
    const views = {
      job: await seeJob(machinist, { number: job.number, now: monday }),
      head: await seeHead(machinist, headId),
      counter: await seeCounter(machinist, { now: monday }),
      found: await findAnything(machinist, { q: job.number }),
      queue: await seeQueue(machinist, 'wash'),
    }
    expect(views.job.account).toBeNull()
    for (const [name, view] of Object.entries(views)) {
      expect([name, said.exec(JSON.stringify(view))?.[0] ?? '']).toEqual([name, ''])
    }
    // It is there to be read by those who may.
    expect(JSON.stringify(await seeJob(counter, { number: job.number, now: monday }))).toMatch(said)
    expect((await refusalOf(seeHandOver(machinist, job.number))).code).toBe('not-allowed')
    expect((await refusalOf(seeUnpaid(machinist))).code).toBe('not-allowed')
  })
})

describe('the customer’s page', () => {
  it('has lines, taxes, total, paid and the balance; no numbers of papers, no notes, no names of ours', async () => {
    const { path } = await makeCustomerLink(owner, { jobId: job.jobId }, at(monday))
    const view = await seeByLink(path.replace('/s/', ''), monday)
    const now = await account(job.jobId)
    expect(view.account).toEqual({
      prices: now.prices.map(({ id, text, reason, quantityThousandths, unitMinor }) => ({
        ...{ id, text, reason, quantityThousandths, unitMinor },
      })),
      taxes: now.taxes,
      // 264.00 + 54.13 − 22.00 − 44.00 = 252.13; 70.00 paid; 182.13 left.
      totalMinor: 25_213,
      paidMinor: 7000,
      balance: { code: 'to-pay', minor: 18_213 },
    })
    expect(JSON.stringify(view.account)).not.toMatch(/slip 77|no\. 118|INV-|R-000|scratched|Odile|version|byId/)
  })
})

describe('handing over', () => {
  const going = (over: object) =>
    handOverSchema.parse({
      ...{ jobId: job.jobId, takenBy: 'Tamsin Rook', note: '' },
      heads: job.heads.map(({ visitId }) => ({ visitId, side: 'not said', partsBack: '' })),
      ...over,
    })
  const paying = (amount: string, confirmed = false) => ({ payment: { amount, method: 'cash', how: '', confirmed } })

  it('wants the payment; only the owner lets it go without, with a reason, and it stays under unpaid', async () => {
    for (const { visitId } of job.heads) await returnAsIs(counter, { visitId, reason: 'pulled' }, at(monday))
    const refused = async (actor: typeof owner, over: object) => refusalOf(handOver(actor, going(over), at(monday)))
    expect((await refused(counter, {})).fields).toHaveProperty(['payment.amount'])
    expect((await refused(owner, {})).fields).toHaveProperty(['payment.amount'])
    expect((await refused(counter, { unpaidReason: 'pays later' })).fields).toHaveProperty('unpaidReason')
    expect((await refused(counter, paying('182.14'))).fields).toHaveProperty(['payment.confirmed'])
    // A part is not all; what was typed is not taken when the heads stay.
    expect((await refused(counter, paying('100'))).fields).toHaveProperty(['payment.amount'])
    expect((await account(job.jobId)).paidMinor).toBe(7000)

    await handOver(owner, going({ ...paying('100'), unpaidReason: 'pays at the end of the month' }), at(monday))
    expect((await account(job.jobId)).balance).toEqual({ code: 'to-pay', minor: 8213 })
    const { rows } = await seeUnpaid(counter)
    expect(rows).toMatchObject([
      { number: job.number, dueMinor: 8213, left: { reason: 'pays at the end of the month' }, invoicedAt: monday },
    ])
    await pay(job.jobId, '82.13')
    expect((await seeUnpaid(counter)).rows).toEqual([])
    expect((await seeHandOver(counter, job.number)).balance).toEqual({ code: 'paid', minor: 0 })
  })
})
