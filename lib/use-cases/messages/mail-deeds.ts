import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { isMailAddress } from '@/lib/core/messages/line'
import { giveUpMail, openMail, requeueMail } from '@/lib/data/mail/outbox'
import { jobToWriteOf } from '@/lib/data/messages'
import { write, type Moment } from '@/lib/data/write'
import type { MailDeed } from '@/lib/schemas/message'

type Done = { readonly messageId: string }

/** Sends a mail that went wrong once more, to the address that the customer has now. */
export async function tryMailAgain(actor: Actor, { messageId }: MailDeed, moment: Moment): Promise<Done> {
  must(allow(actor, 'message.write'))
  return write(actor, moment, async (ctx) => {
    const { message } = await openMail(ctx, messageId)
    const job = await jobToWriteOf(ctx.tx, { id: message.jobId })
    const email = job.customer.contact?.email ?? ''
    if (message.blankedAt !== null || !isMailAddress(email)) {
      throw new RefusedError({ code: 'wrong-state', message: 'There is no mail address for this customer any more.' })
    }
    await requeueMail(ctx, messageId, email)
    ctx.audit({ action: 'message.try-again', subjectId: messageId, jobId: message.jobId })
    return { messageId }
  })
}

/** The customer was told by phone: the mail is not sent any more. */
export async function callInstead(actor: Actor, { messageId }: MailDeed, moment: Moment): Promise<Done> {
  must(allow(actor, 'message.write'))
  return write(actor, moment, async (ctx) => {
    const { message } = await openMail(ctx, messageId)
    await giveUpMail(ctx, messageId)
    ctx.audit({ action: 'message.call-instead', subjectId: messageId, jobId: message.jobId })
    return { messageId }
  })
}
