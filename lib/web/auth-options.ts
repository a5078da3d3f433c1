import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import { db } from '@/lib/data/db'
import { passwordFits } from '@/lib/data/passwords'
import { personBySignIn } from '@/lib/data/people'
import { endSession, openSession } from '@/lib/data/sessions'
import { tabletAt } from '@/lib/data/tablets'
import { env } from '@/lib/env'
import { signInByPin } from '@/lib/use-cases/tablets/sign-in-by-pin'
import { log } from './log'
import { setTabletToken, tabletToken } from './tablet-cookie'
import { signInAllowed, signInFailed, signInSucceeded } from './throttle'

/** The token holds a session id and nothing else; who that is, is asked of the database on every request. */
export const authOptions = (): NextAuthOptions => ({
  secret: env().NEXTAUTH_SECRET,
  session: { strategy: 'jwt', maxAge: 7 * 24 * 60 * 60 },
  pages: { signIn: '/sign-in', error: '/sign-in', signOut: '/sign-in' },
  providers: [
    CredentialsProvider({
      name: 'password',
      credentials: { name: {}, password: {} },
      async authorize(credentials) {
        const name = credentials?.name ?? ''
        const person = await checkPassword(name, credentials?.password ?? '')
        if (!person) return null
        const tablet = await tabletAt(await db(), await tabletToken())
        return { id: await openSession(person.id, new Date(), tablet) }
      },
    }),
    CredentialsProvider({
      id: 'pin',
      name: 'PIN',
      credentials: { personId: {}, pin: {} },
      async authorize(credentials) {
        const id = await checkPin(credentials?.personId ?? '', credentials?.pin ?? '')
        return id === null ? null : { id }
      },
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

async function checkPassword(name: string, password: string) {
  if (name.length > 100 || password.length > 200 || !(await signInAllowed(name))) return null
  const person = await personBySignIn(name)
  const usable = person && !person.retiredAt ? person : null
  if (!(await passwordFits(usable?.passwordHash ?? null, password)) || !usable) {
    await signInFailed(name)
    log.warn({ event: 'sign-in refused' }, 'sign-in')
    return null
  }
  await signInSucceeded(name)
  log.info({ event: 'sign-in', personId: usable.id }, 'sign-in')
  return usable
}

/** The id of the session that a PIN opened on this device; null: refused. */
async function checkPin(personId: string, pin: string): Promise<string | null> {
  if (pin.length > 20) return null
  const token = await tabletToken()
  const tried = await signInByPin({ personId, pin, token }, new Date())
  if (tried.kind !== 'in' || token === null) {
    log.warn({ event: 'PIN refused', why: tried.kind }, 'sign-in')
    return null
  }
  log.info({ event: 'sign-in by PIN', personId: tried.personId, tabletId: tried.tabletId }, 'sign-in')
  await setTabletToken(token)
  return tried.sessionId
}
