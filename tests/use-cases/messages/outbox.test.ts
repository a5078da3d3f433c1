import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { blankMessages } from '@/lib/data/messages'
import { changeMailServerSchema, type ChangeMailServerForm } from '@/lib/schemas/message'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { revokeCustomerLink } from '@/lib/use-cases/links/revoke-customer-link'
import { changeMailServer } from '@/lib/use-cases/messages/change-mail-server'
import { callInstead, tryMailAgain } from '@/lib/use-cases/messages/mail-deeds'
import { seeMailServer } from '@/lib/use-cases/messages/see-mail-server'
import { seeMailTrouble } from '@/lib/use-cases/messages/see-mail-trouble'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { sendQueued } from '@/lib/use-cases/messages/send-queued'
import { sendTestMail } from '@/lib/use-cases/messages/send-test-mail'
import { describeOnBoth, testDatabase, type TestDatabase } from '@/tests/setup/database'
import { certificate, mailPassword, mailUser, startMailServer, type MailServer } from '@/tests/setup/mail-server'
import { enterServer, keptOfMail, mailEnvironment, sendFirst } from '@/tests/setup/mail-shop'
import { at, book, counter, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

const customer = { id: '', name: 'Wren Calloway', phone: '', email: 'wren@example.com', address: '' }
const minute = 60 * 1000
const later = (minutes: number) => new Date(monday.getTime() + minutes * minute)

const sendAt = (now: Date, worker = 'the worker') =>
  sendQueued({ worker, now: () => now, limits: { authority: certificate.cert, waitMs: 2000 } })

let server: MailServer
beforeAll(async () => {
  server = await startMailServer()
})
beforeEach(() => {
  mailEnvironment()
  server.got.splice(0)
  server.logins.splice(0)
  server.refuse = null
})

async function shopWithServer(database: TestDatabase): Promise<string> {
  await openShop(database)
  await enterServer(server.port, monday)
  return (await book({ customer })).number
}

describe('a mail in the outbox', () => {
  let database: TestDatabase
  let number: string
  beforeAll(async () => {
    mailEnvironment()
    database = await testDatabase()
    number = await shopWithServer(database)
  })
  const newest = async () => (await seeMessages(counter, number)).messages[0]

  it('is stored with its log entry, sent with a link that opens the job, and keeps neither link nor password', async () => {
    await sendFirst(number, monday)
    expect(await newest()).toMatchObject({ way: 'mail', toAddress: 'wren@example.com', mail: { state: 'queued' } })
    const before = await keptOfMail(database)
    expect(await sendAt(monday)).toBe(1)
    const token = /https:\/\/heads\.example\/s\/([\w-]{32})/.exec(server.got[0]?.mail.text ?? '')?.[1] ?? ''
    expect((await seeByLink(token, monday)).jobNumber).toBe(number)
    expect(await newest()).toMatchObject({ mail: { state: 'sent', fault: '', settledAt: monday } })
    const { sealedLink } = await database.client.outboxMail.findFirstOrThrow()
    expect(sealedLink).toBe('')
    for (const kept of [before, await keptOfMail(database)]) {
      expect(kept).not.toContain(token)
      expect(kept).not.toContain(JSON.stringify(mailPassword).slice(1, -1))
    }
    expect(await sendAt(later(60))).toBe(0)
    expect(server.got).toHaveLength(1)
  })

  it('is tried again after growing pauses while the server asks for it, and said to be late meanwhile', async () => {
    server.refuse = { at: 'rcpt', code: 451, text: 'Greylisted' }
    const messageId = await sendFirst(number, monday)
    await sendAt(monday)
    expect(await newest()).toMatchObject({
      mail: { state: 'queued', fault: 'try-later', answer: '451 Greylisted', tries: 1, nextAt: later(1) },
    })
    expect(await seeMailTrouble(counter)).toMatchObject([{ messageId, jobNumber: number, isFailed: false }])
    expect(await sendAt(later(0.9))).toBe(0)
    const delays = () => database.client.auditEntry.count({ where: { action: 'message.delay' } })
    expect(await delays()).toBe(1)
    // 1, then 5 minutes later; the same trouble is told of once.
    expect(await sendAt(later(1))).toBe(1)
    expect(await delays()).toBe(1)
    expect(await sendAt(later(5.9))).toBe(0)
    server.refuse = null
    expect(await sendAt(later(6))).toBe(1)
    expect(server.got).toHaveLength(1)
    expect(await newest()).toMatchObject({ mail: { state: 'sent', tries: 3 } })
    expect(await seeMailTrouble(counter)).toEqual([])
    const { lines } = await seeTrail(owner, { find: number, before: null })
    // The trail tells of the trouble once, and puts it down to nobody.
    const told = lines.filter(({ by }) => by === 'the mail server').map(({ sentence }) => sentence)
    expect(told.slice(0, 2)).toEqual([
      'Handed a mail to the mail server',
      'Could not send a mail yet: The mail server asked us to try again later.',
    ])
    expect(JSON.stringify(lines)).not.toMatch(/wren@|Wren/)
  })

  it('is given up after a day of tries', async () => {
    server.refuse = { at: 'data', code: 452, text: 'Disk full' }
    const messageId = await sendFirst(number, monday)
    let tries = 0
    for (let now = 0; now <= 2 * 24 * 60; now += 1) tries += now % 60 === 0 || now < 30 ? await sendAt(later(now)) : 0
    expect(tries).toBe(8)
    expect(await newest()).toMatchObject({ mail: { state: 'failed', fault: 'try-later', tries: 8 } })
    server.refuse = null
    await tryMailAgain(counter, { messageId }, at(later(3000)))
    expect(await sendAt(later(3000))).toBe(1)
    expect(server.got).toHaveLength(1)
  })

  it('fails at once at an address that the server does not know; it can be sent to the right one, or not at all', async () => {
    server.refuse = { at: 'rcpt', code: 550, text: 'No such person' }
    const first = await sendFirst(number, monday)
    const second = await sendFirst(number, monday)
    expect(await sendAt(monday)).toBe(2)
    expect((await seeMailTrouble(counter)).map(({ fault, isFailed }) => [fault, isFailed])).toEqual([
      ['address-refused', true],
      ['address-refused', true],
    ])
    server.refuse = null
    expect(await sendAt(later(2000))).toBe(0)
    await database.client.customerContact.updateMany({ data: { email: 'wren.c@example.com' } })
    await tryMailAgain(counter, { messageId: first }, at(later(1)))
    await callInstead(counter, { messageId: second }, at(later(1)))
    expect(await sendAt(later(2))).toBe(1)
    expect(server.got.map(({ to }) => to)).toEqual([['wren.c@example.com']])
    expect((await seeMessages(counter, number)).messages.slice(0, 2).map(({ mail }) => mail?.state)).toEqual([
      'called',
      'sent',
    ])
    expect(await seeMailTrouble(counter)).toEqual([])
    expect((await refusalOf(callInstead(counter, { messageId: first }, at(later(3))))).code).toBe('wrong-state')
    expect(await database.client.outboxMail.count({ where: { NOT: { sealedLink: '' } } })).toBe(0)
  })

  it('is not sent with a link that was revoked, nor once the customer’s personal data were removed', async () => {
    const revoked = await sendFirst(number, monday)
    const { linkId } = await database.client.message.findUniqueOrThrow({ where: { id: revoked } })
    await revokeCustomerLink(counter, { linkId: linkId ?? '' }, at(monday))
    await sendAt(monday)
    expect(await newest()).toMatchObject({ mail: { state: 'failed', fault: 'lost-link' } })
    const other = (await book({ customer: { ...customer, name: 'Ash Pell' } })).number
    await sendFirst(other, monday)
    const { customerId } = await database.client.job.findUniqueOrThrow({ where: { number: other } })
    await blankMessages(database.client, customerId, monday)
    expect(await sendAt(later(60))).toBe(0)
    expect((await seeMessages(counter, other)).messages[0]).toMatchObject({
      isBlanked: true,
      mail: { state: 'removed' },
    })
    expect(server.got).toEqual([])
    await callInstead(counter, { messageId: revoked }, at(monday))
  })

  it('is nobody else’s to touch while it is being sent', async () => {
    const messageId = await sendFirst(number, monday)
    server.onMail = () => {
      deeds.push(refusalOf(callInstead(counter, { messageId }, at(monday))))
    }
    const deeds: Promise<{ message: string }>[] = []
    await sendAt(monday)
    server.onMail = () => {}
    expect((await Promise.all(deeds)).map(({ message }) => message)).toEqual([
      'This mail is being sent now. Look again in a minute.',
    ])
  })

  it('says so when the server’s secret is another one than it was sealed with', async () => {
    await sendFirst(number, monday)
    vi.stubEnv('NEXTAUTH_SECRET', 'another secret, long enough as well')
    await sendAt(monday)
    expect(await newest()).toMatchObject({ mail: { state: 'queued', fault: 'unreadable-password' } })
    expect((await seeMailServer(owner)).server.password).toBe('unreadable')
    await enterServer(server.port, monday)
    await sendAt(later(1))
    expect(await newest()).toMatchObject({ mail: { state: 'failed', fault: 'lost-link' } })
    mailEnvironment()
    await enterServer(server.port, monday)
  })
})

describeOnBoth('two workers', (open) => {
  it('send each mail once between them', async () => {
    const database = await open()
    const number = await shopWithServer(database)
    for (let mail = 0; mail < 6; mail += 1) await sendFirst(number, monday)
    const tried = await Promise.all([sendAt(monday, 'one'), sendAt(monday, 'two')])
    expect(tried[0] + tried[1]).toBe(6)
    expect(server.got).toHaveLength(6)
    expect(new Set(server.got.map(({ mail }) => mail.messageId)).size).toBe(6)
    expect(await database.client.outboxMail.count({ where: { state: 'sent', tries: 1 } })).toBe(6)
  })
})

describe('the mail settings', () => {
  let database: TestDatabase
  beforeAll(async () => {
    mailEnvironment()
    database = await testDatabase()
    await openShop(database)
  })
  const change = async (over: Partial<ChangeMailServerForm>, op = '') => {
    const { server: now } = await seeMailServer(owner)
    const typed = { ...now, port: String(now.port), password: '', ...over }
    return changeMailServer(owner, changeMailServerSchema.parse(typed), op === '' ? at(monday) : at(monday, op))
  }

  it('never show or keep the password as it is', async () => {
    const typed = { host: 'localhost', port: String(server.port), user: mailUser, fromAddress: mailUser }
    await change({ ...typed, password: mailPassword }, 'op-server')
    const seen = JSON.stringify([await seeMailServer(owner), await keptOfMail(database)])
    for (const secret of [mailPassword, 'pa\\"ss', 'wörd', Buffer.from(mailPassword).toString('base64')]) {
      expect(seen).not.toContain(secret)
    }
    // What is kept of the deed to know it again is keyed: from a bare hash a password could be guessed.
    const { hash } = await database.client.operation.findUniqueOrThrow({ where: { id: 'op-server' } })
    expect(hash).not.toBe(at(monday, 'op-server').op?.hash)
    expect((await seeMailServer(owner)).server.password).toBe('set')
    const { lines } = await seeTrail(owner, { find: 'mail', before: null })
    expect(lines[0]).toMatchObject({ sentence: 'Changed the mail settings', by: owner.name })
    expect(lines[0]?.changes).toContain('password: changed')
  })

  it('keep the password when it is left empty, and ask for it again before it goes to another server', async () => {
    await change({ replyTo: 'desk@quay.example' })
    expect((await seeMailServer(owner)).server).toMatchObject({ password: 'set', replyTo: 'desk@quay.example' })
    for (const moved of [
      { host: 'thief.example' },
      { port: '2525' },
      { user: 'other' },
      { security: 'tls' as const },
    ]) {
      expect((await refusalOf(change(moved))).fields).toHaveProperty('password')
    }
    expect((await refusalOf(change({ security: 'none' }))).fields).toHaveProperty('security')
    expect((await refusalOf(change({ fromAddress: '' }))).fields).toHaveProperty('fromAddress')
    expect((await refusalOf(change({ version: 1 }))).code).toBe('conflict')
  })

  it('are tried by a test mail, which says in words what went wrong', async () => {
    // The certificate of this server is nobody’s that a machine knows.
    const refused = await refusalOf(sendTestMail(owner, { to: 'greta@example.com' }, at(monday)))
    expect(refused.message).toMatch(/^The mail server could not prove who it is/)
    const plain = await startMailServer({ disabledCommands: ['STARTTLS', 'AUTH'], authOptional: true })
    await change({ security: 'none', user: '', port: String(plain.port) })
    expect(await sendTestMail(owner, { to: 'greta@example.com' }, at(monday))).toEqual({ to: 'greta@example.com' })
    expect(plain.got.map(({ to, mail }) => [to, mail.subject])).toEqual([
      [['greta@example.com'], 'Quay Street Heads: test mail'],
    ])
    await change({ host: '' })
    expect((await refusalOf(sendTestMail(owner, { to: 'greta@example.com' }, at(monday)))).message).toMatch(
      /No mail server/,
    )
  })

  it('without a server nothing is stored to be sent', async () => {
    const { number } = await book({ customer })
    expect((await refusalOf(sendFirst(number, monday))).message).toMatch(/No mail server is set/)
    expect(await database.client.message.count()).toBe(0)
  })
})
