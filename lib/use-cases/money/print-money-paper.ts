import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { StoredPaper } from '@/lib/papers/kept-paper'
import { moneyPaperOf } from '@/lib/papers/money-paper'

/** An invoice, a credit note or a receipt, byte for byte as it was first made. */
export async function printMoneyPaper(actor: Actor, paperId: string): Promise<StoredPaper> {
  must(allow(actor, 'paper.print'))
  must(allow(actor, 'price.see'))
  return moneyPaperOf(paperId)
}
