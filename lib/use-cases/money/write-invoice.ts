import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { lineNet, totals } from '@/lib/core/money/totals'
import { addMoneyPaper } from '@/lib/data/money-papers'
import { accountOf, lockAccount, putOnInvoice, type AccountLine } from '@/lib/data/prices'
import { write, type Moment } from '@/lib/data/write'
import { paperFacts } from '@/lib/dossier/money/paper-facts'
import { freezePaper } from '@/lib/papers/money-paper'
import type { WriteInvoiceInput } from '@/lib/schemas/money-papers'

export type WrittenPaper = { readonly paperId: string; readonly number: string }

/** Invoices the lines that are on no invoice yet: number, lines, customer and sums are frozen in one transaction. */
export async function writeInvoice(actor: Actor, input: WriteInvoiceInput, moment: Moment): Promise<WrittenPaper> {
  must(allow(actor, 'invoice.write'))
  const written = await write(actor, moment, async (ctx) => {
    const { jobId } = input
    await lockAccount(ctx.tx, jobId)
    const account = await accountOf(ctx.tx, jobId)
    const open = account.prices.filter(({ invoice }) => invoice === null)
    refuseUnseen(open, account.openMinor, input.seenMinor)
    const { facts, points } = await paperFacts(ctx.tx, jobId, 'invoice', ctx.now, {
      account,
      sums: totals(open, []),
      lines: open.map((line, at) => ({ ...lineFacts(line), netMinor: lineNet(line), line: at })),
    })
    const paperId = await addMoneyPaper(ctx, points, facts)
    await putOnInvoice(ctx, jobId, open, paperId)
    const { number, totalMinor } = facts
    ctx.audit({ action: 'invoice.write', subjectId: paperId, jobId, changes: { number, totalMinor } })
    return { paperId, number }
  })
  await freezePaper(written.paperId)
  return written
}

const lineFacts = ({ text, reason, quantityThousandths, unitMinor, taxName, taxMillionths }: AccountLine) => ({
  ...{ text, reason, quantityThousandths, unitMinor, taxName, taxMillionths },
})

function refuseUnseen(open: readonly AccountLine[], openMinor: number, seenMinor: number): void {
  const refused = (message: string, code: 'wrong-state' | 'conflict' = 'wrong-state') =>
    new RefusedError({ code, message })
  if (open.length === 0) throw refused('There is nothing to invoice. Add a price line first.')
  if (openMinor < 0) throw refused('The discounts come to more than the price lines. Change one of them first.')
  if (openMinor !== seenMinor) {
    throw refused('Someone else changed the price lines. Look at them again, then invoice.', 'conflict')
  }
}
