import { createServer, type AddressInfo, type Server as NetServer, type Socket } from 'node:net'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { deliver, type Delivered, type Mail, type Server } from '@/lib/data/mail/transport'
import { certificate, mailPassword, mailUser, startMailServer, type MailServer } from '../setup/mail-server'
import { ownCertificate } from '../setup/own-certificate'

let server: MailServer
const authority = certificate.cert
const quick = { authority, waitMs: 2000 }

beforeAll(async () => {
  server = await startMailServer()
})

const at = (port: number, over: Partial<Server> = {}): Server => ({
  ...{ host: 'localhost', port, security: 'starttls', user: mailUser, password: mailPassword },
  ...{ fromName: 'Quay Street Heads', fromAddress: mailUser, replyTo: 'desk@quay.example' },
  ...over,
})

const mail = (over: Partial<Mail> = {}): Mail => ({
  ...{ mailId: '<019caed9@quay.example>', at: new Date('2026-03-02T14:00:00Z'), byItself: false },
  ...{ toName: 'Jörg Größe', toAddress: 'joerg@example.com' },
  subject: 'Grüße & 漢字 🙂',
  text: 'Hallo Jörg,\n\n100 % & "fertig".\nhttps://heads.example/s/abc\n',
  ...over,
})

const faultOf = (sent: Delivered): string => (sent.ok ? 'none' : sent.fault)

describe('a mail', () => {
  it('arrives as it was written, over an encrypted connection, signed in by name and password', async () => {
    expect(await deliver(at(server.port), mail(), quick)).toEqual({ ok: true })
    const [got] = server.got.splice(0)
    expect(got?.to).toEqual(['joerg@example.com'])
    expect(got?.mail).toMatchObject({
      subject: 'Grüße & 漢字 🙂',
      messageId: '<019caed9@quay.example>',
      date: new Date('2026-03-02T14:00:00Z'),
      from: { value: [{ name: 'Quay Street Heads', address: mailUser }] },
      to: { value: [{ name: 'Jörg Größe', address: 'joerg@example.com' }] },
      replyTo: { value: [{ address: 'desk@quay.example' }] },
    })
    expect(got?.mail.text?.trimEnd()).toBe(mail().text.trimEnd())
    expect(got?.mail.headers.has('auto-submitted')).toBe(false)
    expect(server.logins.splice(0)).toEqual([`${mailUser} ${mailPassword}`])
  })

  it('says that it went out by itself, where it did', async () => {
    await deliver(at(server.port), mail({ byItself: true }), quick)
    expect(server.got.splice(0)[0]?.mail.headers.get('auto-submitted')).toBe('auto-generated')
  })

  it('gets no header and no recipient from what was typed', async () => {
    await deliver(at(server.port), mail(), quick)
    const usual = [...(server.got.splice(0)[0]?.mail.headers.keys() ?? [])].filter(
      (key) => key !== 'content-transfer-encoding',
    )
    const nasty = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc
        .tuple(
          fc.string({ maxLength: 10 }),
          fc.constantFrom('\r\n', '\n', '\r', '\u2028', '\u0085', '\0'),
          fc.string({ maxLength: 5 }),
        )
        .map(([before, end, after]) => `${before}${end}Bcc: thief@example.com${end}${end}${after}`),
    )
    await fc.assert(
      fc.asyncProperty(nasty, nasty, nasty, async (toName, subject, fromName) => {
        const sent = await deliver(at(server.port, { fromName }), mail({ toName, subject }), quick)
        expect(sent).toEqual({ ok: true })
        const [got] = server.got.splice(0)
        expect(got?.to).toEqual(['joerg@example.com'])
        const keys = [...(got?.mail.headers.keys() ?? [])].filter((key) => key !== 'content-transfer-encoding')
        expect(keys.filter((key) => !usual.includes(key))).toEqual([])
        expect(got?.mail.text?.trimEnd()).toBe(mail().text.trimEnd())
      }),
      { numRuns: 12 },
    )
  }, 30_000)
})

describe('what goes wrong is told apart', () => {
  const refused = async (refuse: MailServer['refuse']) => {
    server.refuse = refuse
    const sent = await deliver(at(server.port), mail(), quick)
    server.refuse = null
    return sent
  }

  it('the address is unknown there, with the server’s own words', async () => {
    expect(await refused({ at: 'rcpt', code: 550, text: 'No such person' })).toEqual({
      ok: false,
      fault: 'address-refused',
      answer: '550 No such person',
    })
  })

  it('the mail is not taken, or not now', async () => {
    expect(faultOf(await refused({ at: 'data', code: 554, text: 'Not wanted' }))).toBe('mail-refused')
    expect(faultOf(await refused({ at: 'rcpt', code: 451, text: 'Greylisted' }))).toBe('try-later')
    expect(faultOf(await refused({ at: 'data', code: 452, text: 'Disk full' }))).toBe('try-later')
    expect(server.got).toEqual([])
  })

  it('the password is wrong, and is not in what is kept of it', async () => {
    const sent = await deliver(at(server.port, { password: 'Authentication' }), mail(), quick)
    // The server's words happen to hold it.
    expect(sent).toEqual({ ok: false, fault: 'wrong-password', answer: expect.stringContaining('535 … failed') })
  })

  it('the certificate is nobody’s that is known, has run out, or is another’s', async () => {
    server.logins.splice(0)
    expect(faultOf(await deliver(at(server.port), mail(), { waitMs: 2000 }))).toBe('certificate')
    const old = ownCertificate('localhost', { to: new Date('2021-01-01T00:00:00Z') })
    const { port: oldPort } = await startMailServer(old)
    expect(faultOf(await deliver(at(oldPort), mail(), { ...quick, authority: old.cert }))).toBe('certificate')
    const other = ownCertificate('mail.example.org')
    const { port: otherPort } = await startMailServer(other)
    expect(faultOf(await deliver(at(otherPort), mail(), { ...quick, authority: other.cert }))).toBe('certificate')
    const { port: tlsPort } = await startMailServer({ ...other, secure: true })
    const tls = at(tlsPort, { security: 'tls' })
    expect(faultOf(await deliver(tls, mail(), { ...quick, authority: other.cert }))).toBe('certificate')
    expect(server.logins).toEqual([])
  })

  it('no encryption is offered: the password is not shown', async () => {
    const plain = await startMailServer({ disabledCommands: ['STARTTLS'], allowInsecureAuth: true })
    expect(faultOf(await deliver(at(plain.port), mail(), quick))).toBe('no-encryption')
    expect(plain.logins).toEqual([])
    expect(plain.got).toEqual([])
  })

  it('nothing answers at that port', async () => {
    const { port, close } = await silent()
    await close()
    expect(faultOf(await deliver(at(port), mail(), quick))).toBe('no-connection')
  })

  it('the server takes the call and says nothing, or stops in the middle', async () => {
    const { port } = await silent()
    const before = Date.now()
    expect(faultOf(await deliver(at(port), mail(), { authority, waitMs: 300 }))).toBe('timeout')
    const slow = await startMailServer({ onData: (stream) => void stream.resume() })
    expect(faultOf(await deliver(at(slow.port), mail(), { authority, waitMs: 500 }))).toBe('timeout')
    const dripping = await silent((socket) => {
      const timer = setInterval(() => socket.write('220-wait\r\n'), 50)
      socket.on('close', () => clearInterval(timer))
    })
    expect(faultOf(await deliver(at(dripping.port), mail(), { authority, waitMs: 300 }))).toBe('timeout')
    expect(Date.now() - before).toBeLessThan(8000)
  })
})

const open: NetServer[] = []
afterAll(() => open.forEach((one) => one.close()))

/** Accepts a connection and never says a word of its own. */
async function silent(greet: (socket: Socket) => void = () => {}) {
  const one = createServer((socket) => greet(socket.on('error', () => {})))
  open.push(one)
  await new Promise<void>((resolve) => one.listen(0, '127.0.0.1', resolve))
  return {
    port: (one.address() as AddressInfo).port,
    close: () => new Promise<void>((resolve) => one.close(() => resolve())),
  }
}
