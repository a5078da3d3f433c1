import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { MailFault } from '@/lib/core/messages/mail-fault'
import { messageKinds, type MailState, type MessageKind, type MessageWay } from '@/lib/core/messages/kinds'
import { isMailAddress } from '@/lib/core/messages/line'
import { phoneCountry } from '@/lib/core/shop/country'
import { db } from '@/lib/data/db'
import { isServerSet, mailServerRow } from '@/lib/data/mail/server'
import { jobToWriteOf, messagesOfJob, messageTexts, type JobToWriteOf, type MessageRow } from '@/lib/data/messages'
import { namesOf } from '@/lib/data/people'
import { dialled } from '@/lib/data/phone'
import { shopOf } from '@/lib/data/shop'
import { localHostName } from '@/lib/data/shop-address'
import { jobText, openFindings, wordingOf, type JobText } from '@/lib/dossier/messages/job-texts'

/** A mail of the shop's own server, and how far it has come. */
export type MailSeen = {
  readonly state: MailState
  readonly tries: number
  /** Code of what went wrong last; '' for nothing. */
  readonly fault: MailFault | ''
  /** The server's own words. */
  readonly answer: string
  readonly nextAt: Date
  readonly settledAt: Date | null
}

export type MessageSeen = {
  readonly id: string
  readonly kind: MessageKind
  readonly way: MessageWay
  readonly toName: string
  readonly toAddress: string
  readonly subject: string
  /** With {link} where the customer's page is named: its address is not kept. */
  readonly body: string
  readonly byItself: boolean
  readonly at: Date
  readonly by: string
  readonly isBlanked: boolean
  readonly mail: MailSeen | null
}

/** A text ready to be looked at and changed. */
export type TextToWrite = JobText & {
  readonly kind: MessageKind
  readonly findingId: string
  /** What a question is about, with its tag; '' for the other texts. */
  readonly about: string
}

export type MessagesView = {
  readonly jobId: string
  readonly number: string
  readonly customerId: string
  readonly customer: {
    readonly name: string
    /** As typed. */
    readonly phone: string
    /** The number in it; '' when there is none that a text message can go to. */
    readonly dial: string
    readonly email: string
  }
  /** Mail addresses that are none are not written to. */
  readonly hasMail: boolean
  readonly hasServer: boolean
  /** The host of a shop's address that no customer can open; '' when they can. */
  readonly localHost: string
  readonly texts: readonly TextToWrite[]
  /** The newest; `more`: there are older ones. */
  readonly messages: readonly MessageSeen[]
  readonly more: boolean
  readonly timeZone: string
  readonly locale: string
}

const shownAtOnce = 50

/** What was written to the customer of a job, and what can be written now. */
export async function seeMessages(actor: Actor, number: string): Promise<MessagesView> {
  must(allow(actor, 'message.write'))
  const client = await db()
  const job = await jobToWriteOf(client, { number })
  const shop = await shopOf(client)
  const own = new Map((await messageTexts(client)).map((row) => [row.kind, row]))
  const found = await messagesOfJob(client, job.id, shownAtOnce + 1)
  const names = await namesOf(found.map(({ byId }) => byId))
  const { name = '', phone = '', email = '' } = job.customer.contact ?? {}
  return {
    jobId: job.id,
    number: job.number,
    customerId: job.customerId,
    customer: { name, phone, dial: dialled(phone, phoneCountry(shop)), email },
    hasMail: isMailAddress(email),
    hasServer: isServerSet(await mailServerRow(client)),
    localHost: localHostName(),
    texts: subjectsOf(job).map(({ kind, findingId, about }) => ({
      ...{ kind, findingId, about },
      ...jobText(kind, job, { shop, wording: wordingOf(kind, own.get(kind)), findingId: findingId || null }),
    })),
    messages: found.slice(0, shownAtOnce).map((row) => messageSeen(row, names)),
    more: found.length > shownAtOnce,
    timeZone: shop.timeZone,
    locale: shop.locale,
  }
}

type Subject = Pick<TextToWrite, 'kind' | 'findingId' | 'about'>

/** A question for each finding that waits for an answer; every other text once. */
function subjectsOf(job: JobToWriteOf): Subject[] {
  const findings = openFindings(job)
  return messageKinds.flatMap((kind): Subject[] =>
    kind === 'question' && findings.length > 0
      ? findings.map(({ id, tag, what }) => ({ kind, findingId: id, about: `${tag}: ${what}` }))
      : [{ kind, findingId: '', about: '' }],
  )
}

const messageSeen = (row: MessageRow, names: ReadonlyMap<string, string>): MessageSeen => ({
  id: row.id,
  kind: row.kind as MessageKind,
  way: row.way as MessageWay,
  ...{ toName: row.toName, toAddress: row.toAddress, subject: row.subject, body: row.body },
  byItself: row.byItself,
  at: row.at,
  by: names.get(row.byId) ?? '',
  isBlanked: row.blankedAt !== null,
  mail: row.mail && {
    state: row.mail.state as MailState,
    tries: row.mail.tries,
    fault: row.mail.fault as MailFault | '',
    answer: row.mail.answer,
    nextAt: row.mail.nextAt,
    settledAt: row.mail.settledAt,
  },
})
