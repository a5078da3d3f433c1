import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import { passwordFits } from '@/lib/data/passwords'
import { personBySignIn } from '@/lib/data/people'
import { endSession, openSession } from '@/lib/data/sessions'
import { env } from '@/lib/env'
import { log } from './log'
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
        return person ? { id: await openSession(person.id, new Date()) } : null
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
