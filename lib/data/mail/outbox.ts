import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { MailFault } from '@/lib/core/messages/mail-fault'
import type { Db, Reader } from '../db'
import { seal, unseal } from '../sealed'
import type { Author, Write } from '../write'

const linkPurpose = (messageId: string): string => `customer link of message ${messageId}`

export type NewMail = {
  readonly messageId: string
  readonly mailId: string
  readonly token: string | null
  /** False: it waits for somebody to add one. */
  readonly hasAddress: boolean
}

/** Puts a stored message into the outbox, to be sent at once; one without an address is not tried, and is in trouble. */
export async function queueMail(ctx: Write, { messageId, mailId, token, hasAddress }: NewMail): Promise<void> {
  const sealedLink = token === null ? '' : seal(token, linkPurpose(messageId))
  const fault: MailFault = 'no-address'
  const stands = hasAddress ? { state: 'queued' } : { state: 'failed', fault, settledAt: ctx.now }
  await ctx.tx.outboxMail.create({ data: { messageId, mailId, sealedLink, nextAt: ctx.now, ...stands } })
}

/** The token of the mail's link: '' when it has none, null when it can no longer be read. */
export const tokenOf = ({ messageId, sealedLink }: { messageId: string; sealedLink: string }): string | null =>
  sealedLink === '' ? '' : unseal(sealedLink, linkPurpose(messageId))

/** Longer than the longest try, so that nobody else sends a mail that is under way. */
export const leaseMs = 5 * 60 * 1000

const isFree = (now: Date) => ({ OR: [{ leaseUntil: null }, { leaseUntil: { lt: now } }] })

/**
 * The mail that is due for longest, held for this worker; null: none is due. Whoever changes the row first has it: a
 * second worker that looked at the same moment goes on to the next.
 */
export async function claimMail(client: Db, worker: string, now: Date) {
  for (;;) {
    const due = await client.outboxMail.findFirst({
      where: { state: 'queued', nextAt: { lte: now }, ...isFree(now) },
      orderBy: { nextAt: 'asc' },
      include: { message: { include: { job: { select: { id: true, number: true } } } } },
    })
    if (!due) return null
    const { count } = await client.outboxMail.updateMany({
      where: { messageId: due.messageId, state: 'queued', tries: due.tries, leaseUntil: due.leaseUntil },
      data: { leaseBy: worker, leaseUntil: new Date(now.getTime() + leaseMs), tries: { increment: 1 } },
    })
    if (count === 1) return { ...due, tries: due.tries + 1 }
  }
}
export type ClaimedMail = NonNullable<Awaited<ReturnType<typeof claimMail>>>

type Settled =
  | { readonly state: 'sent' }
  | { readonly state: 'failed'; readonly fault: MailFault; readonly answer: string }
  | { readonly state: 'queued'; readonly fault: MailFault; readonly answer: string; readonly nextAt: Date }

/** Writes down how a try ended. False: it is not this worker's any more. A link that was sent is not kept. */
export async function settleMail(
  ctx: Write<Author>,
  messageId: string,
  worker: string,
  end: Settled,
): Promise<boolean> {
  const { count } = await ctx.tx.outboxMail.updateMany({
    where: { messageId, state: 'queued', leaseBy: worker },
    data: {
      ...(end.state === 'sent' ? { fault: '', answer: '', sealedLink: '' } : {}),
      ...end,
      settledAt: end.state === 'queued' ? null : ctx.now,
      leaseUntil: null,
      leaseBy: '',
    },
  })
  return count === 1
}

/** A mail that somebody wants to do something about; refused while it is being sent, and once that is settled. */
export async function openMail(ctx: Write, messageId: string) {
  const mail = await ctx.tx.outboxMail.findUnique({ where: { messageId }, include: { message: true } })
  if (!mail) throw new RefusedError({ code: 'not-found', message: 'There is no such mail here.' })
  if (mail.state !== 'queued' && mail.state !== 'failed') {
    throw new RefusedError({ code: 'wrong-state', message: 'This mail was settled already. Look at the job again.' })
  }
  if (mail.leaseUntil !== null && mail.leaseUntil >= ctx.now) {
    throw new RefusedError({ code: 'wrong-state', message: 'This mail is being sent now. Look again in a minute.' })
  }
  return mail
}

/** Back to the front of the outbox, with all its tries again. */
export const requeueMail = (ctx: Write, messageId: string, toAddress: string) =>
  ctx.tx.outboxMail.update({
    where: { messageId },
    data: {
      ...{ state: 'queued', tries: 0, nextAt: ctx.now, settledAt: null, leaseUntil: null, leaseBy: '' },
      message: { update: { toAddress } },
    },
  })

export const giveUpMail = (ctx: Write, messageId: string) =>
  ctx.tx.outboxMail.update({
    where: { messageId },
    data: { state: 'called', settledAt: ctx.now, sealedLink: '', leaseUntil: null, leaseBy: '' },
  })

/** Mails that went wrong, the oldest first: failed for good, or tried in vain and waiting for the next try. */
export async function mailsInTrouble(reader: Reader, take: number) {
  const include = {
    message: {
      include: {
        job: {
          select: {
            number: true,
            customerId: true,
            customer: { select: { contact: { select: { name: true, phone: true } } } },
          },
        },
      },
    },
  } as const
  const orderBy = { nextAt: 'asc' } as const
  // One question an index: asked together, the database reads the whole table.
  const failed = await reader.outboxMail.findMany({ where: { state: 'failed' }, orderBy, take, include })
  const delayed = await reader.outboxMail.findMany({
    where: { state: 'queued', NOT: { fault: '' } },
    orderBy,
    take,
    include,
  })
  return [...failed, ...delayed].slice(0, take)
}

/**
 * What waits in a backup may have left since: nothing of it leaves by itself. Each is in trouble until a person lets it go.
 */
export async function holdBackMails(ctx: Write<Author>): Promise<void> {
  const waiting = await ctx.tx.outboxMail.findMany({
    where: { state: 'queued' },
    select: { messageId: true, message: true },
  })
  await ctx.tx.outboxMail.updateMany({
    where: { state: 'queued' },
    data: {
      state: 'failed',
      fault: 'restored' satisfies MailFault,
      answer: '',
      settledAt: ctx.now,
      leaseUntil: null,
      leaseBy: '',
    },
  })
  for (const { messageId, message } of waiting) {
    ctx.audit({ action: 'message.hold-back', subjectId: messageId, jobId: message.jobId })
  }
}
