import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import { browserWords } from '@/lib/core/access/browser'
import { endSession } from '@/lib/data/sessions'
import { env } from '@/lib/env'
import { signIn } from '@/lib/use-cases/people/sign-in'
import { signInByPin } from '@/lib/use-cases/tablets/sign-in-by-pin'
import { askedFrom, browserHeader, whereFrom } from './asked-from'
import { browserMark, setBrowserMark } from './browser-mark'
import { log } from './log'
import { sessionIdOfRequest } from './require-actor'
import { sessionCookie } from './session-cookie'
import { SignInRefused, type SignInAnswer } from './sign-in-answer'
import { signInTrouble } from './sign-in-trouble'
import { setTabletToken, tabletToken } from './tablet-cookie'

/**
 * The token holds a session id and nothing else; who that is, is asked of the database on every request. `say`: why a
 * sign-in was refused, for the answer's status. What goes wrong inside leaves here as one word.
 */
export const authOptions = (say: (answer: SignInAnswer) => void): NextAuthOptions => ({
  secret: env().NEXTAUTH_SECRET,
  session: { strategy: 'jwt', maxAge: 7 * 24 * 60 * 60 },
  pages: { signIn: '/sign-in', error: '/sign-in', signOut: '/sign-in' },
  cookies: { sessionToken: sessionCookie() },
  providers: [
    CredentialsProvider({
      name: 'password',
      credentials: { name: {}, password: {}, code: {} },
      authorize: (credentials) =>
        guarded(say, () => byPassword(credentials?.name ?? '', credentials?.password ?? '', credentials?.code ?? '')),
    }),
    CredentialsProvider({
      id: 'pin',
      name: 'PIN',
      credentials: { personId: {}, pin: {} },
      authorize: (credentials) => guarded(say, () => byPin(credentials?.personId ?? '', credentials?.pin ?? '')),
    }),
  ],
  callbacks: {
    jwt: ({ token, user }) => ({ sid: user ? user.id : token.sid }),
    session: ({ session }) => ({ expires: session.expires }),
  },
  events: {
    async signOut({ token }) {
      if (typeof token.sid === 'string') await endSession(token.sid, 'signed out', new Date())
    },
  },
  logger: {
    error: (code) => log.error({ code }, 'sign-in'),
    warn: (code) => log.warn({ code }, 'sign-in'),
    debug: () => undefined,
  },
})

/** Whatever is thrown in here would stand in an address, word for word: only a fixed word leaves it. */
async function guarded(say: (answer: SignInAnswer) => void, work: () => Promise<string>): Promise<{ id: string }> {
  try {
    return { id: await work() }
  } catch (error) {
    const answer: SignInAnswer = error instanceof SignInRefused ? error.answer : { why: signInTrouble(error) }
    say(answer)
    throw new Error(answer.why)
  }
}

/** The id of the session that a name and a password opened. */
async function byPassword(name: string, password: string, code: string): Promise<string> {
  const address = await askedFrom()
  const tried = await signIn(
    {
      ...{ name, password, code, address },
      browser: browserWords(await browserHeader()),
      mark: await browserMark(),
      tabletToken: await tabletToken(),
      sessionId: await sessionIdOfRequest(),
    },
    new Date(),
  )
  if (tried.kind === 'in') {
    log.info({ event: 'sign-in', personId: tried.personId, address }, 'sign-in')
    await setBrowserMark(tried.mark)
    return tried.sessionId
  }
  // Asking for the code is no refusal, and the name that was typed may be a password typed in the wrong field.
  if (tried.kind !== 'code') {
    const who = { personId: tried.personId ?? null, ...(await whereFrom()) }
    log.warn({ event: 'sign-in refused', why: tried.kind, ...who }, 'sign-in')
  }
  throw new SignInRefused(
    tried.kind === 'wait' ? { why: 'wait', retryAfterS: Math.ceil(tried.waitMs / 1000) } : { why: tried.kind },
  )
}

/** A PIN has six digits: a text that is cut here is none either way. */
const longestPin = 20

/** The id of the session that a PIN opened on this device. */
async function byPin(personId: string, pin: string): Promise<string> {
  const token = await tabletToken()
  const tried = await signInByPin({ personId, pin: pin.slice(0, longestPin), token }, new Date())
  if (tried.kind !== 'in' || token === null) {
    const { kind: why, ...who } = { personId: null, tabletId: null, ...tried }
    log.warn({ event: 'PIN refused', why, ...who, ...(await whereFrom()) }, 'sign-in')
    throw new SignInRefused({ why: 'wrong' })
  }
  log.info({ event: 'sign-in by PIN', personId: tried.personId, tabletId: tried.tabletId }, 'sign-in')
  await setTabletToken(token)
  return tried.sessionId
}
