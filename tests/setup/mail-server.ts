import type { AddressInfo } from 'node:net'
import { simpleParser, type ParsedMail } from 'mailparser'
import { SMTPServer, type SMTPServerOptions } from 'smtp-server'
import { afterAll } from 'vitest'
import { ownCertificate } from './own-certificate'

export const mailUser = 'shop@quay.example'
export const mailPassword = 'pa"ss wörd & 7'
export const certificate = ownCertificate()

export type Got = { readonly to: readonly string[]; readonly raw: string; readonly mail: ParsedMail }

export type MailServer = {
  readonly port: number
  readonly got: Got[]
  /** Every name and password that was shown to it. */
  readonly logins: string[]
  /** What it answers from now on: an error with a code to a recipient or to a whole mail; null: it takes them. */
  refuse: { readonly at: 'rcpt' | 'data'; readonly code: number; readonly text: string } | null
  /** Called when a mail has come in whole, before it is answered. */
  onMail: () => void
}

const refusal = ({ code, text }: { code: number; text: string }): Error =>
  Object.assign(new Error(text), { responseCode: code })

/** A mail server on this machine that keeps what it is handed. It offers STARTTLS and asks for the password above. */
export async function startMailServer(options: SMTPServerOptions = {}): Promise<MailServer> {
  const state: MailServer = { port: 0, got: [], logins: [], refuse: null, onMail: () => {} }
  const server = new SMTPServer({
    ...certificate,
    logger: false,
    onAuth({ username = '', password = '' }, _session, done) {
      state.logins.push(`${username} ${password}`)
      if (username === mailUser && password === mailPassword) return done(null, { user: username })
      done(refusal({ code: 535, text: 'Authentication failed' }))
    },
    onRcptTo(_address, _session, done) {
      done(state.refuse?.at === 'rcpt' ? refusal(state.refuse) : null)
    },
    onData(stream, session, done) {
      const pieces: Buffer[] = []
      stream.on('data', (piece: Buffer) => pieces.push(piece))
      stream.on('end', () => {
        if (state.refuse?.at === 'data') return done(refusal(state.refuse))
        const raw = Buffer.concat(pieces)
        const to = session.envelope.rcptTo.map(({ address }) => address)
        void simpleParser(raw).then((mail) => {
          state.got.push({ to, raw: raw.toString('utf8'), mail })
          state.onMail()
          done(null)
        })
      })
    },
    ...options,
  })
  server.on('error', () => {}) // a client that went away
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  afterAll(() => new Promise<void>((resolve) => server.close(() => resolve())))
  return Object.assign(state, { port: (server.server.address() as AddressInfo).port })
}
