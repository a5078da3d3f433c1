import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { jobTotals } from '@/lib/core/money/account'
import type { AmountManner } from '@/lib/core/money/amount'
import { balanceOf } from '@/lib/core/money/balance'
import { creditOf, type CreditedLine } from '@/lib/core/money/credit'
import type { MoneyFacts } from '@/lib/core/money/paper-facts'
import { minorAt } from '@/lib/core/money/price-of'
import { addMoneyPaper, creditsOf, moneyPaperById } from '@/lib/data/money-papers'
import { accountOf, keepDue, lockAccount } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import { paperFacts } from '@/lib/dossier/money/paper-facts'
import { freezePaper } from '@/lib/papers/money-paper'
import type { WriteCreditNoteInput } from '@/lib/schemas/money-papers'
import type { WrittenPaper } from './write-invoice'

/** Takes back part of an invoice, or all of it, with a reason; never more than the invoice. */
export async function writeCreditNote(
  actor: Actor,
  input: WriteCreditNoteInput,
  moment: Moment,
): Promise<WrittenPaper> {
  must(allow(actor, 'invoice.write'))
  const written = await write(actor, moment, async (ctx) => {
    const { kind, jobId } = await moneyPaperById(ctx.tx, input.invoiceId)
    if (kind !== 'invoice') throw new RefusedError({ code: 'not-found', message: 'There is no such invoice here.' })
    await lockAccount(ctx.tx, jobId)
    const { said } = await moneyPaperById(ctx.tx, input.invoiceId)
    const before = (await creditsOf(ctx.tx, input.invoiceId)).flatMap(creditedLines)
    const credit = must(creditOf(said.lines, before, askedLines(said, input, await shopOf(ctx.tx))))
    const account = await accountOf(ctx.tx, jobId)
    const after = jobTotals([], [{ kind: 'credit-note', ...credit }], [])
    const left = { totalMinor: account.totalMinor + after.totalMinor, dueMinor: account.dueMinor + after.totalMinor }
    const { facts, points } = await paperFacts(ctx.tx, jobId, 'credit-note', ctx.now, {
      account: { ...account, balance: balanceOf(left) },
      sums: credit,
      lines: credit.lines.flatMap(({ line, netMinor }) => {
        const of = said.lines[line]
        return of ? [{ ...of, line, netMinor }] : []
      }),
      of: said.number,
      reason: input.reason,
    })
    const paperId = await addMoneyPaper(ctx, points, facts, { invoiceId: input.invoiceId })
    await keepDue(ctx.tx, jobId)
    const { number, totalMinor, of, reason } = facts
    ctx.audit({ action: 'credit-note.write', subjectId: paperId, jobId, changes: { number, of, totalMinor, reason } })
    return { paperId, number }
  })
  await freezePaper(written.paperId)
  return written
}

const creditedLines = ({ lines }: MoneyFacts): CreditedLine[] => lines.map(({ line, netMinor }) => ({ line, netMinor }))

/** Amounts are typed without a sign: of a discount it is the discount that is taken back. */
function askedLines(invoice: MoneyFacts, { amounts }: WriteCreditNoteInput, manner: AmountManner): CreditedLine[] {
  return amounts.flatMap((text, line) => {
    if (text === '') return []
    const minor = minorAt(text, manner, `amounts.${line}`)
    const isDiscount = (invoice.lines[line]?.netMinor ?? 0) < 0
    return [{ line, netMinor: isDiscount ? -minor : minor }]
  })
}
