import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { MailFault } from '@/lib/core/messages/mail-fault'
import type { MessageKind } from '@/lib/core/messages/kinds'
import { db } from '@/lib/data/db'
import { mailsInTrouble } from '@/lib/data/mail/outbox'

export type MailTrouble = {
  readonly messageId: string
  readonly kind: MessageKind
  readonly jobNumber: string
  readonly customerId: string
  readonly customer: string
  readonly phone: string
  readonly fault: MailFault | ''
  /** False: it is tried again by itself. */
  readonly isFailed: boolean
}

/** So many stand at the counter; the rest follows as they are put right. */
const shownAtOnce = 20

/** Mails to customers that were not sent, or not yet, the oldest first. */
export async function seeMailTrouble(actor: Actor): Promise<readonly MailTrouble[]> {
  must(allow(actor, 'message.write'))
  const found = await mailsInTrouble(await db(), shownAtOnce)
  return found.map(({ messageId, state, fault, message }) => ({
    messageId,
    kind: message.kind as MessageKind,
    jobNumber: message.job.number,
    customerId: message.job.customerId,
    customer: message.job.customer.contact?.name ?? '',
    phone: message.job.customer.contact?.phone ?? '',
    fault: fault as MailFault | '',
    isFailed: state === 'failed',
  }))
}
