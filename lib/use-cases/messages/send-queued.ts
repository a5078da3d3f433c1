import { isFinal } from '@/lib/core/messages/mail-fault'
import { nextTryAt } from '@/lib/core/messages/tries'
import { withLink } from '@/lib/core/messages/wording'
import { db } from '@/lib/data/db'
import { isRevoked, linkPath } from '@/lib/data/links'
import { claimMail, settleMail, tokenOf, type ClaimedMail } from '@/lib/data/mail/outbox'
import { serverOf } from '@/lib/data/mail/server'
import { deliver, type Delivered, type Limits, type Mail } from '@/lib/data/mail/transport'
import { shopAddress } from '@/lib/data/shop-address'
import { shopOf } from '@/lib/data/shop'
import { write } from '@/lib/data/write'

export type Sender = {
  /** Who holds a mail while it is sent: one name for one process. */
  readonly worker: string
  readonly now: () => Date
  readonly limits?: Limits
}

/** Sends every mail that is due, one after the other; how many were tried. */
export async function sendQueued(sender: Sender): Promise<number> {
  const client = await db()
  let tried = 0
  for (;;) {
    const mail = await claimMail(client, sender.worker, sender.now())
    if (!mail) return tried
    await settle(mail, sender, await send(mail, sender))
    tried += 1
  }
}

/** The text would lead nowhere: the link was revoked meanwhile, or its token cannot be read any more. */
const lostLink: Delivered = { ok: false, fault: 'lost-link', answer: '' }

async function send(mail: ClaimedMail, { limits }: Sender): Promise<Delivered> {
  const client = await db()
  const { name } = await shopOf(client)
  const server = await serverOf(client, name)
  if (typeof server === 'string') return { ok: false, fault: server, answer: '' }
  const token = tokenOf(mail)
  if (token === null || (await isRevoked(client, mail.message.linkId))) return lostLink
  const address = `${shopAddress()}${linkPath(token)}`
  const { message } = mail
  const letter: Mail = {
    ...{ mailId: mail.mailId, at: message.at, byItself: message.byItself },
    ...{ toName: message.toName, toAddress: message.toAddress },
    subject: withLink(message.subject, address),
    text: withLink(message.body, address),
  }
  return deliver(server, letter, limits)
}

/** Sent, given up, or back in the outbox until the next try. The page of the job and the counter learn of it. */
async function settle(mail: ClaimedMail, { worker, now }: Sender, sent: Delivered): Promise<void> {
  const moment = { now: now() }
  const subject = { subjectId: mail.messageId, jobId: mail.message.job.id }
  await write({ service: 'mail' }, moment, async (ctx) => {
    if (sent.ok) {
      if (await settleMail(ctx, mail.messageId, worker, { state: 'sent' })) {
        ctx.audit({ action: 'message.deliver', ...subject })
      }
      return
    }
    const { fault, answer } = sent
    const nextAt = isFinal(fault) ? null : nextTryAt(mail.tries, ctx.now)
    const end = nextAt
      ? ({ state: 'queued', fault, answer, nextAt } as const)
      : ({ state: 'failed', fault, answer } as const)
    if (!(await settleMail(ctx, mail.messageId, worker, end))) return
    if (nextAt === null) ctx.audit({ action: 'message.fail', ...subject, changes: { fault } })
    // Once for each cause: a server that is down for a night is one line of the trail.
    else if (mail.fault !== fault) ctx.audit({ action: 'message.delay', ...subject, changes: { fault } })
  })
}
