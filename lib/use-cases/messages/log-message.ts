import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { linkById } from '@/lib/data/links'
import { addMessage, jobToWriteOf } from '@/lib/data/messages'
import { write, type Moment } from '@/lib/data/write'
import type { LogMessage } from '@/lib/schemas/message'

/** Writes down a text that a person sent by their own means, since only they know that it left. */
export async function logMessage(actor: Actor, input: LogMessage, moment: Moment): Promise<{ messageId: string }> {
  must(allow(actor, 'message.write'))
  return write(actor, moment, async (ctx) => {
    const job = await jobToWriteOf(ctx.tx, { id: input.jobId })
    const { kind, way, subject, body, linkId } = input
    if (linkId !== '' && (await linkById(ctx.tx, linkId)).jobId !== job.id) {
      throw new RefusedError({ code: 'not-found', message: 'There is no such link on this job.' })
    }
    const { name = '', phone = '', email = '' } = job.customer.contact ?? {}
    const messageId = await addMessage(ctx, {
      ...{ jobId: job.id, kind, way, subject, body },
      findingId: input.findingId || null,
      toName: name,
      toAddress: { 'own-mail': email, sms: phone, copy: '' }[way],
      linkId: linkId || null,
      byItself: false,
    })
    ctx.audit({ action: 'message.log', subjectId: messageId, jobId: job.id, changes: { kind, way } })
    return { messageId }
  })
}
