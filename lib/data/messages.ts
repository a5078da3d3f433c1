import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { MessageKind, MessageWay } from '@/lib/core/messages/kinds'
import type { Reader, Tx } from './db'
import { newId } from './ids'
import type { Row } from './tables'
import type { Write } from './write'

const jobInclude = {
  customer: { select: { contact: { select: { name: true, phone: true, email: true } } } },
  visits: {
    orderBy: { position: 'asc' },
    select: {
      position: true,
      scrappedAt: true,
      takenOffAt: true,
      returned: { select: { visitId: true } },
      handOver: { select: { visitId: true } },
      releases: { select: { id: true } },
      head: { select: { tags: { select: { number: true, to: true }, orderBy: { from: 'asc' } } } },
      findings: { where: { answer: null }, orderBy: { reportedAt: 'asc' } },
    },
  },
} as const

/** A job as the texts about it need it, by its id or its number. */
export async function jobToWriteOf(reader: Reader, where: { readonly id: string } | { readonly number: string }) {
  const job = await reader.job.findUnique({ where, include: jobInclude })
  if (!job) throw new RefusedError({ code: 'not-found', message: 'There is no such job here.' })
  return job
}
export type JobToWriteOf = Awaited<ReturnType<typeof jobToWriteOf>>

/** The newest messages of a job, with how far a mail has come. */
export const messagesOfJob = (reader: Reader, jobId: string, take: number) =>
  reader.message.findMany({
    where: { jobId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take,
    include: { mail: true },
  })
export type MessageRow = Awaited<ReturnType<typeof messagesOfJob>>[number]

export type NewMessage = {
  readonly jobId: string
  readonly kind: MessageKind
  readonly findingId: string | null
  readonly way: MessageWay
  readonly toName: string
  readonly toAddress: string
  readonly subject: string
  readonly body: string
  readonly linkId: string | null
  readonly byItself: boolean
}

export async function addMessage(ctx: Write, message: NewMessage): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.message.create({ data: { ...message, id, at: ctx.now, byId: ctx.actor.personId } })
  return id
}

/** Takes a customer's personal data out of what was written to them; what was sent, when and by whom stays. */
export async function blankMessages(tx: Tx, customerId: string, now: Date): Promise<void> {
  const ofCustomer = { job: { customerId } }
  await tx.outboxMail.updateMany({
    where: { message: ofCustomer, state: { in: ['queued', 'failed'] } },
    data: { state: 'removed', settledAt: now },
  })
  await tx.outboxMail.updateMany({ where: { message: ofCustomer }, data: { sealedLink: '', answer: '' } })
  await tx.message.updateMany({
    where: ofCustomer,
    data: { toName: '', toAddress: '', subject: '', body: '', blankedAt: now },
  })
}

export const messageTexts = (reader: Reader): Promise<Row<'MessageText'>[]> => reader.messageText.findMany()

/** Null: the owner has not changed this text. */
export const messageTextOf = (reader: Reader, kind: MessageKind): Promise<Row<'MessageText'> | null> =>
  reader.messageText.findUnique({ where: { kind } })
