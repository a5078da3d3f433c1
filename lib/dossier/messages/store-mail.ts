import type { MessageKind } from '@/lib/core/messages/kinds'
import { RefusedError } from '@/lib/core/errors'
import { isMailAddress } from '@/lib/core/messages/line'
import { hasLink } from '@/lib/core/messages/wording'
import { newId } from '@/lib/data/ids'
import { makeLink } from '@/lib/data/links'
import { queueMail } from '@/lib/data/mail/outbox'
import { isServerSet, mailServerRow } from '@/lib/data/mail/server'
import { addMessage, type JobToWriteOf } from '@/lib/data/messages'
import type { Write } from '@/lib/data/write'
import type { Wording } from '@/lib/words/messages'

export type Letter = Wording & {
  readonly kind: MessageKind
  readonly findingId: string | null
  readonly byItself: boolean
}

/** Why the shop's own server cannot write to this customer; null: it can. */
export async function whyNoMail(ctx: Write, job: JobToWriteOf): Promise<string | null> {
  if (!isServerSet(await mailServerRow(ctx.tx))) return 'No mail server is set. The owner enters it in the Back room.'
  return isMailAddress(job.customer.contact?.email ?? '')
    ? null
    : 'There is no mail address for this customer. Add it to the customer first.'
}

/**
 * Stores a mail with its log entry, its link and its place in the outbox, in the transaction it is given: from then on it
 * is sent, whatever happens to this process.
 */
export async function storeMail(ctx: Write, job: JobToWriteOf, letter: Letter): Promise<{ messageId: string }> {
  const refusal = await whyNoMail(ctx, job)
  if (refusal !== null) throw new RefusedError({ code: 'wrong-state', message: refusal })
  return putMail(ctx, job, letter)
}

/** The same for a text that goes out by itself: without an address it is stored as not sent, so that somebody is told. */
export async function putMail(ctx: Write, job: JobToWriteOf, letter: Letter): Promise<{ messageId: string }> {
  const { kind, findingId, subject, body, byItself } = letter
  const { name = '', email = '' } = job.customer.contact ?? {}
  const link = hasLink(body) || hasLink(subject) ? await makeLink(ctx, job.id) : null
  const messageId = await addMessage(ctx, {
    ...{ jobId: job.id, kind, findingId, subject, body, byItself },
    way: 'mail',
    ...{ toName: name, toAddress: email },
    linkId: link?.linkId ?? null,
  })
  const server = await mailServerRow(ctx.tx)
  const domain = server?.fromAddress.split('@').at(-1) ?? 'localhost'
  const hasAddress = isMailAddress(email)
  await queueMail(ctx, { messageId, mailId: `<${newId(ctx.now)}@${domain}>`, token: link?.token ?? null, hasAddress })
  const of = { subjectId: messageId, jobId: job.id }
  if (hasAddress) ctx.audit({ action: 'message.send', ...of, changes: { kind, byItself } })
  else ctx.audit({ action: 'message.fail', ...of, changes: { fault: 'no-address' } })
  return { messageId }
}
