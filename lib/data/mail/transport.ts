import 'server-only'
import { createTransport, type TransportOptions } from 'nodemailer'
import { oneLine } from '@/lib/core/messages/line'
import { mailFaultOf, type MailFault, type TransportError } from '@/lib/core/messages/mail-fault'

export type Server = {
  readonly host: string
  readonly port: number
  /** tls | starttls | none */
  readonly security: string
  readonly user: string
  readonly password: string
  readonly fromName: string
  readonly fromAddress: string
  readonly replyTo: string
}

export type Mail = {
  readonly mailId: string
  readonly at: Date
  readonly toName: string
  readonly toAddress: string
  readonly subject: string
  readonly text: string
  /** No person looked at it before it left: mail programs that answer by themselves leave it alone. */
  readonly byItself: boolean
}

/** `authority`: a certificate to believe besides those that every machine knows. */
export type Limits = { readonly waitMs?: number; readonly authority?: string }

export type Delivered =
  { readonly ok: true } | { readonly ok: false; readonly fault: MailFault; readonly answer: string }

const usualWaitMs = 20_000
/** A server that says a word now and then never runs out of time by itself: the whole of a mail may take so many waits. */
const waitsInAll = 4

/** Hands one mail to the server, or says why not. Nothing is thrown, and nothing is logged: a log would hold addresses. */
export async function deliver(server: Server, mail: Mail, limits: Limits = {}): Promise<Delivered> {
  const transport = createTransport(optionsOf(server, limits))
  try {
    await withinMs(waitsInAll * (limits.waitMs ?? usualWaitMs), transport.sendMail(contentOf(server, mail)))
    return { ok: true }
  } catch (error) {
    return failureOf(error, server)
  } finally {
    transport.close()
  }
}

async function withinMs(limitMs: number, work: Promise<unknown>): Promise<void> {
  let timer: NodeJS.Timeout | undefined
  const tooLong = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(Object.assign(new Error(''), { code: 'ETIMEDOUT' })), limitMs)
  })
  try {
    await Promise.race([work, tooLong])
  } finally {
    clearTimeout(timer)
  }
}

function optionsOf({ host, port, security, user, password }: Server, limits: Limits): TransportOptions {
  const { waitMs = usualWaitMs, authority } = limits
  const options = {
    ...{ host, port },
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user === '' ? {} : { auth: { user, pass: password } }),
    tls: { minVersion: 'TLSv1.2', ...(authority === undefined ? {} : { ca: authority }) },
    ...{ connectionTimeout: waitMs, greetingTimeout: waitMs, socketTimeout: waitMs, dnsTimeout: waitMs },
    // A text of ours is a text: nothing in it makes the server read a file or fetch an address.
    ...{ disableFileAccess: true, disableUrlAccess: true },
  }
  return options as TransportOptions
}

/** Names and subject on one line each; addresses were checked to be one address. */
const contentOf = (server: Server, mail: Mail) => ({
  messageId: mail.mailId,
  date: mail.at,
  from: { name: oneLine(server.fromName), address: server.fromAddress },
  to: { name: oneLine(mail.toName), address: mail.toAddress },
  ...(server.replyTo === '' ? {} : { replyTo: server.replyTo }),
  subject: oneLine(mail.subject),
  text: mail.text,
  ...(mail.byItself ? { headers: { 'Auto-Submitted': 'auto-generated' } } : {}),
  envelope: { from: server.fromAddress, to: [mail.toAddress] },
})

/** What the server said may hold anything: one line of it is kept, never our password. */
function failureOf(error: unknown, { password }: Server): Delivered {
  const said = (typeof error === 'object' && error !== null ? error : {}) as TransportError & { response?: string }
  const answer = oneLine(said.response ?? said.message ?? '')
  const safe = password === '' ? answer : answer.replaceAll(password, '…')
  return { ok: false, fault: mailFaultOf(said), answer: safe.slice(0, 300) }
}
