import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { changePriceLineSchema, endPriceLineSchema } from '@/lib/schemas/job'
import { changePriceLine } from '@/lib/use-cases/jobs/change-price-line'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { printMoneyPaper } from '@/lib/use-cases/money/print-money-paper'
import { voidPayment } from '@/lib/use-cases/money/void-payment'
import { describeOnBoth, testDatabase } from '@/tests/setup/database'
import { readPdf } from '@/tests/pdf/read-pdf'
import { at, counter, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'
import { account, bookPriced, credit, discount, invoice, pay, price } from './account-shop'

vi.setConfig({ testTimeout: 120_000 })

const voided = (paymentId: string, reason = 'wrong job') => voidPayment(counter, { paymentId, reason }, at(monday))

describe('a payment', () => {
  it('has method, who took it, and a receipt at once; the deposit of a booking too', async () => {
    const { client } = await openedShop()
    const { jobId } = await bookPriced({ deposit: '$50.00', depositMethod: 'card', depositHow: 'by phone' })
    const taken = await pay(jobId, '100', { method: 'check', how: 'no. 118' })
    expect(taken.receipt).toBe('R-0002')
    expect((await account(jobId)).payments).toMatchObject([
      { kind: 'deposit', method: 'card', how: 'by phone', byId: counter.personId, receipt: { number: 'R-0001' } },
      { kind: 'payment', method: 'check', how: 'no. 118', minor: 10_000, receipt: { number: 'R-0002' } },
    ])
    expect(await client.moneyPaperFile.count()).toBe(2)
  })

  it('has a receipt that reads the same for ever', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { receiptId } = await pay(jobId, '100')
    const words = async () =>
      (await readPdf((await printMoneyPaper(counter, receiptId)).bytes)).text.replace(/\s+/g, ' ')
    const before = await words()
    // 264.00 charged with 24.00 tax; 100.00 paid, 164.00 left.
    for (const part of ['Receipt R-0001', 'Payment received: $100.00 (cash), by Odile Marsh', '$24.00', '$164.00']) {
      expect(before).toContain(part)
    }
    await pay(jobId, '164')
    await price(jobId, 'Wash', '10')
    expect(await words()).toBe(before)
  })

  it('of more than is owed is asked twice', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    expect((await refusalOf(pay(jobId, '264.01'))).fields).toHaveProperty('confirmed')
    expect((await account(jobId)).payments).toEqual([])
    await pay(jobId, '264.01', { confirmed: true })
    expect((await account(jobId)).balance).toEqual({ code: 'to-refund', minor: 1 })
  })

  it('at a booking too: a deposit of more than its price lines', async () => {
    const { client } = await openedShop()
    // 264.00 in all.
    expect((await refusalOf(bookPriced({ deposit: '264.01' }))).fields).toHaveProperty('depositConfirmed')
    expect(await client.job.count()).toBe(0)
    const { jobId } = await bookPriced({ deposit: '264.01', depositConfirmed: true })
    expect((await account(jobId)).balance).toEqual({ code: 'to-refund', minor: 1 })
    expect((await account((await bookPriced({ prices: [], deposit: '50' })).jobId)).paidMinor).toBe(5000)
  })

  it('that is voided does not count, says why, and stays with its receipt', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { id, receiptId } = await pay(jobId, '100')
    await voided(id)
    const { payments, paidMinor } = await account(jobId)
    expect([payments[0]?.voided, paidMinor]).toEqual(['wrong job', 0])
    expect((await printMoneyPaper(counter, receiptId)).bytes.length).toBeGreaterThan(500)
    expect((await refusalOf(voided(id))).message).toMatch(/already voided/)
    const { lines } = await seeTrail(owner, { find: '', before: null })
    expect(lines.map(({ sentence }) => sentence)).toContain('Voided a payment of $100.00: wrong job')
  })

  it('is not voided under a refund', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { id } = await pay(jobId, '100')
    const refund = await pay(jobId, '60', { kind: 'refund' })
    expect((await refusalOf(voided(id))).message).toMatch(/Void the refund first/)
    await voided(refund.id)
    await voided(id)
    expect((await account(jobId)).paidMinor).toBe(0)
  })
})

describeOnBoth('refunds', (open) => {
  it('ten at once: never more is paid back than was paid', async () => {
    await openShop(await open())
    const { jobId } = await bookPriced()
    await pay(jobId, '100')
    const asked = Array.from({ length: 10 }, () => pay(jobId, '30', { kind: 'refund' }))
    const done = (await Promise.allSettled(asked)).filter(({ status }) => status === 'fulfilled')
    expect(done).toHaveLength(3)
    expect((await account(jobId)).paidMinor).toBe(1000)
  })

  it('receipts: 20 at once, no gap, none twice', async () => {
    await openShop(await open())
    const { jobId } = await bookPriced()
    const taken = await Promise.all(Array.from({ length: 20 }, () => pay(jobId, '1')))
    const numbers = taken.map(({ receipt }) => receipt).sort()
    expect(numbers).toEqual(Array.from({ length: 20 }, (_, i) => `R-${String(i + 1).padStart(4, '0')}`))
  })
})

describe('a price line', () => {
  it('is changed with a reason; the trail keeps both amounts by name', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const [line] = (await account(jobId)).prices
    const form = { jobId, lineId: line?.id ?? '', text: 'Flat cut, pair', quantity: '1.5', unitPrice: '130', tax: '10' }
    const input = changePriceLineSchema.parse({ ...form, version: 1, why: 'both sides' })
    await changePriceLine(counter, input, at(monday))
    // 1.5 × 130.00 = 195.00 and 19.50.
    expect((await account(jobId)).totalMinor).toBe(21_450)
    expect((await refusalOf(changePriceLine(counter, { ...input, text: 'x' }, at(monday)))).code).toBe('conflict')
    const { lines } = await seeTrail(owner, { find: '', before: null })
    const entry = lines.find(({ sentence }) => sentence === 'Changed price line “Flat cut”')
    expect(entry?.changes).toEqual([
      'text: from Flat cut to Flat cut, pair',
      'quantity: from 2 to 1.5',
      'unit price: from $120.00 to $130.00',
      'reason: both sides',
    ])
  })

  it('wants a reason to be changed or removed', () => {
    const form = { jobId: 'j', lineId: 'l', version: 1, text: 'x', quantity: '1', unitPrice: '1', tax: '' }
    expect(changePriceLineSchema.safeParse({ ...form, why: ' ' }).success).toBe(false)
    expect(changePriceLineSchema.safeParse({ ...form, why: 'agreed' }).success).toBe(true)
  })

  it('is neither changed nor removed where a discount would be more than the rest', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    await discount(jobId, '100')
    const [line, less] = (await account(jobId)).prices
    const change = (of: typeof line, unitPrice: string, quantity: string) => {
      const form = { jobId, lineId: of?.id ?? '', version: 1, text: 'x', quantity, unitPrice, tax: '10', why: 'agreed' }
      return changePriceLine(counter, changePriceLineSchema.parse(form), at(monday))
    }
    const remove = (of: typeof line) =>
      endPriceLine(counter, endPriceLineSchema.parse({ jobId, lineId: of?.id, why: 'agreed' }), at(monday))
    // 2 × 120.00 less 100.00: a discount of 240.01 leaves −0.01; 1 × 99.99 leaves −0.01; without the line −100.00 is left.
    for (const deed of [() => change(less, '240.01', '1'), () => change(line, '99.99', '1'), () => remove(line)]) {
      expect((await refusalOf(deed())).message).toMatch(/^The discounts would be more/)
    }
    expect((await account(jobId)).totalMinor).toBe(15_400)
    await change(line, '100', '1')
    expect((await account(jobId)).totalMinor).toBe(0)
    await remove(less)
    expect((await account(jobId)).totalMinor).toBe(11_000)
  })

  it('and a payment are never beyond what the books hold', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    // 9,999 × 20,000,000.00 is beyond 32 bits of cents; so is 18,181,818.18 and its tax with the 264.00 that are there.
    for (const [quantity, unitPrice] of [
      ['9999', '20000000'],
      ['1', '18181818.18'],
    ] as const) {
      expect((await refusalOf(price(jobId, 'Slip', unitPrice, '10', quantity))).message).toMatch(/too large/)
    }
    await pay(jobId, '20000000', { confirmed: true })
    expect((await refusalOf(pay(jobId, '264', { confirmed: true }))).message).toMatch(/too large/)
    expect(await account(jobId)).toMatchObject({ totalMinor: 26_400, paidMinor: 2_000_000_000 })
  })

  it('of a discount is never more than what it is taken off, with its tax', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    expect((await refusalOf(discount(jobId, '240.01'))).fields).toHaveProperty('amount')
    // Untaxed, 240.01 would leave 23.99 with tax, and −0.01 before it.
    expect((await refusalOf(discount(jobId, '240.01', ''))).fields).toHaveProperty('amount')
    // 240.00 at 10 %: a discount of 240.00 at 12 % is 268.80 with its tax, and the lines are 264.00.
    expect((await refusalOf(discount(jobId, '240', '12'))).fields).toHaveProperty('amount')
    await discount(jobId, '240')
    expect((await account(jobId)).totalMinor).toBe(0)
    const view = await seeJob(counter, { number: '26-0001', now: monday })
    expect(view.account?.prices[1]).toMatchObject({ unitMinor: -24_000, reason: 'returning customer' })
  })
})

describe('what is owed on a job', () => {
  it('is kept with it through any deeds, and is what its rows come to', async () => {
    const { client } = await openedShop()
    const deed = fc.record({ what: fc.nat(6), cents: fc.integer({ min: 1, max: 30_000 }), at: fc.nat(5) })
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { minLength: 1, maxLength: 12 }), async (deeds) => {
        const { jobId } = await bookPriced()
        for (const one of deeds) await tried(jobId, one)
        const { dueMinor } = await client.job.findUniqueOrThrow({ where: { id: jobId } })
        const now = await account(jobId)
        expect(dueMinor).toBe(now.dueMinor)
        expect(now.paidMinor).toBeGreaterThanOrEqual(0)
        expect(now.totalMinor).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: 12 },
    )
  })
})

/** One deed of many; what is refused changes nothing. */
async function tried(jobId: string, { what, cents, at: place }: { what: number; cents: number; at: number }) {
  const amount = (cents / 100).toFixed(2)
  const { papers, payments, prices } = await account(jobId)
  const paper = papers.filter(({ kind }) => kind === 'invoice')[place]
  const deeds = [
    () => price(jobId, 'Wash', amount, '8.25', '1.5'),
    () => discount(jobId, amount, '10'),
    () => pay(jobId, amount, { confirmed: true }),
    () => pay(jobId, amount, { kind: 'refund' }),
    () => invoice(jobId),
    () =>
      paper
        ? credit(
            paper.id,
            Array.from({ length: place + 1 }, (_, i) => (i === place ? amount : '')),
          )
        : null,
    () => voided(payments[place]?.id ?? ''),
    () => endPriceLine(counter, { jobId, lineId: prices[place]?.id ?? '', why: 'tried' }, at(monday)),
  ]
  await Promise.resolve(deeds[what]?.()).catch(() => null)
}

async function openedShop() {
  const database = await testDatabase()
  await openShop(database)
  return database
}
