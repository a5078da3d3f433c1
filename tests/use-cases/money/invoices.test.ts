import { describe, expect, it, vi } from 'vitest'
import { changePriceLineSchema } from '@/lib/schemas/job'
import { changePriceLine } from '@/lib/use-cases/jobs/change-price-line'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { printMoneyPaper } from '@/lib/use-cases/money/print-money-paper'
import { seeInvoice } from '@/lib/use-cases/money/see-invoice'
import { writeInvoice } from '@/lib/use-cases/money/write-invoice'
import { describeOnBoth, testDatabase } from '@/tests/setup/database'
import { readPdf } from '@/tests/pdf/read-pdf'
import { at, counter, machinist, monday, openShop, refusalOf } from '../jobs/counter-shop'
import { account, bookPriced, credit, discount, invoice, pay, price } from './account-shop'

vi.setConfig({ testTimeout: 120_000 })

const textOf = async (paperId: string): Promise<string> =>
  (await readPdf((await printMoneyPaper(counter, paperId)).bytes)).text.replace(/\s+/g, ' ')

describeOnBoth('numbers of invoices', (open) => {
  it('20 at the same time: no gap, none twice, and those that fail take none', async () => {
    await openShop(await open())
    const jobs: string[] = []
    for (let i = 0; i < 20; i += 1) jobs.push((await bookPriced()).jobId)
    // Each is asked for twice: one of the two finds nothing to invoice any more, and gives its number back.
    const asked = [...jobs, ...jobs].map((jobId) => writeInvoice(counter, { jobId, seenMinor: 26_400 }, at(monday)))
    const settled = await Promise.allSettled(asked)
    const numbers = settled.flatMap((one) => (one.status === 'fulfilled' ? [one.value.number] : [])).sort()
    expect(numbers).toEqual(Array.from({ length: 20 }, (_, i) => `INV-${String(i + 1).padStart(4, '0')}`))
    expect(settled.filter(({ status }) => status === 'rejected')).toHaveLength(20)
  })

  it('of one job asked for ten times at once there is one invoice', async () => {
    const database = await open()
    await openShop(database)
    const { jobId } = await bookPriced()
    const asked = Array.from({ length: 10 }, () => writeInvoice(counter, { jobId, seenMinor: 26_400 }, at(monday)))
    const done = (await Promise.allSettled(asked)).filter(({ status }) => status === 'fulfilled')
    expect(done).toHaveLength(1)
    expect(await database.client.moneyPaper.count({ where: { kind: 'invoice' } })).toBe(1)
  })
})

describe('an invoice', () => {
  it('says lines, discount, each tax, total, what was paid and what is left', async () => {
    await openShop(await testDatabase())
    const { jobId } = await bookPriced({ deposit: '50', depositMethod: 'card' })
    await price(jobId, 'Setting up', '95.01', '8.25', '1.5')
    await discount(jobId, '$20.00')
    // By hand: 240.00 − 20.00 = 220.00 at 10 % → 22.00; 1.5 × 95.01 = 142.515 → 142.52 at 8.25 % → 11.7579 → 11.76.
    // Net 362.52, tax 33.76, total 396.28; 50.00 paid, 346.28 to pay.
    const { paperId, number } = await invoice(jobId)
    const text = await textOf(paperId)
    for (const part of [
      `Invoice ${number}`,
      'Setting up',
      '1.5',
      '$142.52',
      'Discount: returning customer',
      '-$20.00',
      '$22.00',
      '$11.76',
      '$362.52',
      '$396.28',
      '$50.00',
      'To pay',
      '$346.28',
    ]) {
      expect(text).toContain(part)
    }
  })

  it('is frozen: the same bytes whatever is changed after it', async () => {
    const { client } = await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    const before = await printMoneyPaper(counter, paperId)
    await client.customerContact.updateMany({ data: { name: 'Somebody Else' } })
    await client.shop.updateMany({ data: { name: 'Another Name', paper: 'a4' } })
    await pay(jobId, '264')
    const after = await printMoneyPaper(counter, paperId)
    expect(Buffer.from(after.bytes).equals(Buffer.from(before.bytes))).toBe(true)
    expect(await client.moneyPaperFile.count({ where: { paperId } })).toBe(1)
  })

  it('is made from its frozen facts when its bytes were not written yet', async () => {
    const { client } = await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    const first = await textOf(paperId)
    await client.$executeRawUnsafe('DROP TRIGGER "MoneyPaperFile_no_delete"')
    await client.$executeRawUnsafe('DELETE FROM "MoneyPaperFile"')
    await client.customerContact.updateMany({ data: { name: 'Somebody Else' } })
    expect(await textOf(paperId)).toBe(first)
  })

  it('fixes its lines: they are neither changed nor removed', async () => {
    const { client } = await openedShop()
    const { jobId } = await bookPriced()
    await invoice(jobId)
    const [line] = (await account(jobId)).prices
    if (!line) throw new Error('There is no line.')
    const change = { jobId, lineId: line.id, version: 1, text: 'x', quantity: '1', unitPrice: '1', tax: '', why: 'y' }
    const attempts = [
      changePriceLine(counter, changePriceLineSchema.parse(change), at(monday)),
      endPriceLine(counter, { jobId, lineId: line.id, why: 'y' }, at(monday)),
    ]
    for (const attempt of attempts) expect((await refusalOf(attempt)).message).toMatch(/on an invoice/)
    expect(await client.priceLine.findUnique({ where: { id: line.id } })).toMatchObject({ unitMinor: 12_000 })
  })

  it('is for what was seen: lines that changed meanwhile are looked at first; nothing is no invoice', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    await price(jobId, 'Wash', '10')
    expect((await refusalOf(writeInvoice(counter, { jobId, seenMinor: 26_400 }, at(monday)))).code).toBe('conflict')
    await invoice(jobId)
    expect((await refusalOf(invoice(jobId))).message).toMatch(/nothing to invoice/)
  })

  it('is followed by a second one for what was added after it; both count', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    await invoice(jobId)
    await price(jobId, 'Guides', '100')
    // 264.00 and 110.00.
    expect(await account(jobId)).toMatchObject({ totalMinor: 37_400, openMinor: 11_000 })
    const second = await invoice(jobId)
    expect(second.number).toBe('INV-0002')
    const text = await textOf(second.paperId)
    for (const part of ['Total $110.00', 'Job 26-0001 in all $374.00', 'To pay $374.00']) expect(text).toContain(part)
    expect(await account(jobId)).toMatchObject({ totalMinor: 37_400, openMinor: 0 })
  })
})

describe('a credit note', () => {
  it('has numbers of its own, takes back with the tax, and the balance follows', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    await pay(jobId, '264')
    // 40.00 with 10 %: 44.00 back.
    const note = await credit(paperId, ['40.00'])
    expect(note.number).toBe('CN-0001')
    expect(await account(jobId)).toMatchObject({
      totalMinor: 22_000,
      taxMinor: 2000,
      dueMinor: -4400,
      balance: { code: 'to-refund', minor: 4400 },
    })
    const text = await textOf(note.paperId)
    for (const part of ['Credit note CN-0001', 'INV-0001', 'agreed on the phone', '$40.00', '$44.00']) {
      expect(text).toContain(part)
    }
    expect((await seeInvoice(counter, paperId)).lines[0]).toMatchObject({ leftMinor: 20_000, left: '200.00' })
  })

  it('never takes more than the invoice, also when ten are written at once', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    const asked = await Promise.allSettled(Array.from({ length: 10 }, () => credit(paperId, ['50'])))
    expect(asked.filter(({ status }) => status === 'fulfilled')).toHaveLength(4)
    expect((await refusalOf(credit(paperId, ['40.01']))).fields).toHaveProperty(['amounts.0'])
    await credit(paperId, ['40'])
    expect((await account(jobId)).totalMinor).toBe(0)
    expect((await refusalOf(credit(paperId, ['1']))).code).toBe('invalid')
  })

  it('is no credit note to a receipt or another credit note', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    const note = await credit(paperId, ['10'])
    const { receiptId } = await pay(jobId, '20')
    for (const other of [note.paperId, receiptId]) {
      expect((await refusalOf(credit(other, ['1']))).code).toBe('not-found')
    }
  })
})

describe('papers of money', () => {
  it('are not a machinist’s to read', async () => {
    await openedShop()
    const { jobId } = await bookPriced()
    const { paperId } = await invoice(jobId)
    expect((await refusalOf(printMoneyPaper(machinist, paperId))).code).toBe('not-allowed')
    expect((await refusalOf(seeInvoice(machinist, paperId))).code).toBe('not-allowed')
  })
})

async function openedShop() {
  const database = await testDatabase()
  await openShop(database)
  return database
}
