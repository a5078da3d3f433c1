import { parse } from 'csv-parse/sync'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { exportBooks } from '@/lib/use-cases/money/export-books'
import { seeBooks } from '@/lib/use-cases/money/see-books'
import { voidPayment } from '@/lib/use-cases/money/void-payment'
import { testDatabase } from '@/tests/setup/database'
import { at, counter, monday, openShop, owner } from '../jobs/counter-shop'
import { bookPriced, credit, invoice, pay, price } from './account-shop'

vi.setConfig({ testTimeout: 120_000 })

const march = { from: '2026-03-01', to: '2026-03-31' }
/** The last evening of March in the shop's zone, which is April in London. */
const lastEvening = new Date('2026-04-01T02:00:00Z')
const april = new Date('2026-04-01T14:00:00Z')

/** Read back by a reader that is not ours. */
const read = async (kind: 'invoices' | 'payments' | 'tax', span: { from: string; to: string } = march) =>
  parse((await exportBooks(owner, { kind, ...span }, { now: new Date('2026-03-31T12:00:00Z') })).text, {
    bom: true,
    columns: true,
  }) as Record<string, string>[]

beforeAll(async () => {
  await openShop(await testDatabase())
  const customer = { id: '', name: '=HYPERLINK("x")', phone: '', email: '', address: '' }
  const { jobId } = await bookPriced({ customer })
  await price(jobId, 'Gaskets', '50', '')
  // 240.00 at 10 % and 50.00 without tax: 290.00, 24.00, 314.00.
  const { paperId } = await invoice(jobId)
  // 40.00 of the cut: 44.00 back.
  await credit(paperId, ['40', ''], 'agreed, see "call"', lastEvening)
  const { id } = await pay(jobId, '100', { method: 'card' })
  await voidPayment(counter, { paymentId: id, reason: 'typed twice' }, at(monday))
  await pay(jobId, '200', { method: 'cash' })
  await pay(jobId, '20', { kind: 'refund', method: 'transfer' }, april)
}, 120_000)

describe('files for the bookkeeper', () => {
  it('invoices and credit notes, by the day in the shop’s zone, formulas made harmless', async () => {
    const rows = await read('invoices')
    expect(rows.map((row) => [row.Number, row.Kind, row.Date, row.Net, row.Tax, row.Total, row['To invoice']])).toEqual(
      [
        ['INV-0001', 'invoice', '2026-03-02', '290.00', '24.00', '314.00', ''],
        ['CN-0001', 'credit note', '2026-03-31', '-40.00', '-4.00', '-44.00', 'INV-0001'],
      ],
    )
    expect(rows[0]?.Customer).toBe(`'=HYPERLINK("x")`)
    expect(rows[1]?.Reason).toBe('agreed, see "call"')
    expect(await read('invoices', { from: '2026-03-03', to: '2026-03-30' })).toEqual([])
  })

  it('payments, those that do not count with 0', async () => {
    const rows = await read('payments', { from: '2026-03-01', to: '2026-04-01' })
    expect(rows.map((row) => [row.Receipt, row.Kind, row['Paid by'], row.Amount, row.Voided])).toEqual([
      ['R-0001', 'Payment', 'card', '0.00', 'typed twice'],
      ['R-0002', 'Payment', 'cash', '200.00', ''],
      ['R-0003', 'Paid back', 'bank transfer', '-20.00', ''],
    ])
    expect(rows.map((row) => row['Taken by'])).toEqual([counter.name, counter.name, counter.name])
  })

  it('tax by month and customer, credit notes taken off, untaxed apart', async () => {
    expect(await read('tax')).toMatchObject([
      { Month: '2026-03', 'Rate %': '0', Net: '50.00', 'Tax amount': '0.00' },
      { Month: '2026-03', 'Rate %': '10', Net: '200.00', 'Tax amount': '20.00' },
    ])
  })

  it('begin with last month', async () => {
    expect(await seeBooks(owner, april)).toEqual({ from: '2026-03-01', to: '2026-03-31' })
    expect(await seeBooks(owner, lastEvening)).toEqual({ from: '2026-02-01', to: '2026-02-28' })
  })
})
