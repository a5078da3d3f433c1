import type { MessageKind } from '@/lib/core/messages/kinds'
import { jobToWriteOf, messageTextOf } from '@/lib/data/messages'
import { shopOf } from '@/lib/data/shop'
import type { Write } from '@/lib/data/write'
import { jobText, wordingOf } from './job-texts'
import { storeMail, whyNoMail } from './store-mail'

/**
 * Stores a text that the owner turned on, in the transaction of the deed that it tells of. Off, or without a server, an
 * address or something that the text needs: nothing is stored, and the deed goes on.
 */
export async function sendByItself(
  ctx: Write,
  kind: MessageKind,
  jobId: string,
  findingId: string | null = null,
): Promise<void> {
  const row = await messageTextOf(ctx.tx, kind)
  if (!row?.byItself) return
  const job = await jobToWriteOf(ctx.tx, { id: jobId })
  const text = jobText(kind, job, { shop: await shopOf(ctx.tx), wording: wordingOf(kind, row), findingId })
  if (text.lacks.length > 0 || (await whyNoMail(ctx, job)) !== null) return
  await storeMail(ctx, job, { kind, findingId, subject: text.subject, body: text.body, byItself: true })
}
