import { must } from '@/lib/core/errors'
import { checkDiscounts, checkTaxes } from '@/lib/core/money/account-limits'
import { openLines } from '@/lib/data/prices'
import type { Write } from '@/lib/data/write'

/** Changes the lines of a job that are on no invoice yet; refused where its discounts would be more than they come to. */
export async function changingOpenLines(ctx: Write, jobId: string, change: () => Promise<void>): Promise<void> {
  const before = await openLines(ctx.tx, jobId)
  await change()
  const after = await openLines(ctx.tx, jobId)
  must(checkDiscounts(before, after))
  must(checkTaxes(before, after))
}
