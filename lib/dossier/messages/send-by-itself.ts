import type { MessageKind } from '@/lib/core/messages/kinds'
import { isServerSet, mailServerRow } from '@/lib/data/mail/server'
import { jobToWriteOf, messageTextOf } from '@/lib/data/messages'
import { shopOf } from '@/lib/data/shop'
import type { Write } from '@/lib/data/write'
import { jobText, wordingOf } from './job-texts'
import { putMail } from './store-mail'

/**
 * Stores a text that the owner turned on, in the transaction of the deed that it tells of. Off, or without a server or
 * something that the text needs: nothing is stored, and the deed goes on. For a customer without a mail address it is
 * stored as not sent: it stands at the counter until somebody adds an address or calls.
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
  if (text.lacks.length > 0 || !isServerSet(await mailServerRow(ctx.tx))) return
  await putMail(ctx, job, { kind, findingId, subject: text.subject, body: text.body, byItself: true })
}
