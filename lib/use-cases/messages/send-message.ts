import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { write, type Moment } from '@/lib/data/write'
import { storeMail } from '@/lib/dossier/messages/store-mail'
import type { SendMessage } from '@/lib/schemas/message'
import { refuseLacks } from './refuse-lacks'

/** Stores a mail as it was seen and changed; the shop's mail server gets it within seconds. */
export async function sendMessage(actor: Actor, input: SendMessage, moment: Moment): Promise<{ messageId: string }> {
  must(allow(actor, 'message.write'))
  return write(actor, moment, async (ctx) => {
    const job = await refuseLacks(ctx.tx, input)
    const { kind, subject, body } = input
    return storeMail(ctx, job, { kind, subject, body, findingId: input.findingId || null, byItself: false })
  })
}
