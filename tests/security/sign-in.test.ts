import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { NextRequest } from 'next/server'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { isTrouble, problemWords } from '@/app/(sign-in)/sign-in/_components/sign-in-words'
import { asksAgain } from '@/lib/core/access/asks-again'
import { authOptions } from '@/lib/web/auth-options'
import { sessionCookie } from '@/lib/web/session-cookie'
import { withReason, type SignInAnswer } from '@/lib/web/sign-in-answer'
import { proxy } from '@/proxy'

const { signIn, logged } = vi.hoisted(() => ({ signIn: vi.fn(), logged: [] as object[] }))
vi.mock('@/lib/use-cases/people/sign-in', () => ({ signIn }))
vi.mock('next/headers', () => ({
  headers: async () => new Headers(),
  cookies: async () => ({ get: () => undefined, set: () => undefined }),
}))
vi.mock('@/lib/web/log', () => {
  const note = (line: object) => void logged.push(line)
  return { log: { error: note, warn: note, info: note } }
})

beforeEach(() => {
  process.env.NEXTAUTH_SECRET = 'a secret of at least thirty-two characters'
  process.env.NEXTAUTH_URL = 'http://127.0.0.1:3000'
  logged.length = 0
})

type Provider = { readonly options: { readonly authorize: (credentials: object) => Promise<unknown> } }

/** What the sign-in by password throws, and what it says to the answer. */
async function refusedWith(): Promise<{ thrown: string; said: SignInAnswer | null }> {
  let said: SignInAnswer | null = null
  const [byPassword] = authOptions((answer) => (said = answer)).providers as unknown as Provider[]
  const credentials = { name: 'dov', password: 'seats before springs' }
  const thrown = await byPassword?.options.authorize(credentials).catch((error: Error) => error.message)
  return { thrown: String(thrown), said }
}

describe('what a sign-in says when it comes to nothing', () => {
  it.each(['SQLITE_FULL: database or disk is full', 'no such table: Person in /srv/shop/brasstag.db', ''])(
    'the server’s own trouble is one fixed word, and 503: "%s"',
    async (inside) => {
      signIn.mockRejectedValueOnce(new Error(inside))
      const { thrown, said } = await refusedWith()
      expect([thrown, said]).toEqual(['failed', { why: 'failed' }])
      expect(withReason(Response.json({ url: '/sign-in?error=failed' }), { why: 'failed' }).status).toBe(503)
      expect(JSON.stringify(logged)).not.toContain('seats before springs')
    },
  )

  it.each([
    [{ code: 'SQLITE_FULL' }, 'disk-full', /disk of the shop’s computer is full/],
    [{ code: 'ECONNREFUSED' }, 'away', /database does not answer/],
    [{ code: 'SQLITE_BUSY' }, 'busy', /Something else is using the shop’s data/],
    [{ code: 'SQLITE_READONLY' }, 'read-only', /can be read but not written/],
  ])(
    'a fault of disk or database is its own word, which the page says as a sentence: %o',
    async (inside, word, says) => {
      signIn.mockRejectedValueOnce(Object.assign(new Error('inside: /srv/shop/brasstag.db'), inside))
      const { thrown, said } = await refusedWith()
      expect([thrown, said]).toEqual([word, { why: word }])
      expect(withReason(Response.json({}), said ?? { why: 'wrong' }).status).toBe(503)
      expect(isTrouble(word) && problemWords(word)).toMatch(says)
      expect(problemWords('failed')).not.toMatch(says)
    },
  )

  it('a wrong password is 401, a wait is 429 and says for how long; neither is the server’s trouble', async () => {
    signIn.mockResolvedValueOnce({ kind: 'wrong' })
    expect(await refusedWith()).toEqual({ thrown: 'wrong', said: { why: 'wrong' } })
    signIn.mockResolvedValueOnce({ kind: 'wait', waitMs: 14_001 })
    const { said } = await refusedWith()
    expect(said).toEqual({ why: 'wait', retryAfterS: 15 })
    const answer = withReason(Response.json({}, { status: 401 }), said ?? { why: 'failed' })
    expect([answer.status, answer.headers.get('Retry-After')]).toEqual([429, '15'])
    expect(withReason(Response.json({}), { why: 'wrong' }).status).toBe(401)
  })

  it('is logged without the password and without what was typed as a name', async () => {
    signIn.mockResolvedValueOnce({ kind: 'wrong' })
    await refusedWith()
    expect(logged).toMatchObject([{ event: 'sign-in refused', why: 'wrong' }])
    expect(JSON.stringify(logged)).not.toMatch(/dov|seats before springs/)
  })
})

describe('the session’s cookie and the way to the app', () => {
  const page = async () => proxy(new NextRequest('http://shop.example/counter'))

  it('over HTTPS the cookie is the host’s own and browsers stay with HTTPS', async () => {
    process.env.NEXTAUTH_URL = 'https://shop.example'
    expect(sessionCookie()).toEqual({
      name: '__Host-brasstag-session',
      options: { httpOnly: true, sameSite: 'lax', path: '/', secure: true },
    })
    expect((await page()).headers.get('Strict-Transport-Security')).toMatch(/^max-age=31536000/)
  })

  it('on plain HTTP in the shop it works without, and no browser is told to come by HTTPS', async () => {
    expect(sessionCookie()).toMatchObject({ name: 'brasstag-session', options: { httpOnly: true, secure: false } })
    expect((await page()).headers.get('Strict-Transport-Security')).toBeNull()
  })
})

it('a page that is opened by a link alone is 429 once it was asked for too often', async () => {
  const asked = () => proxy(new NextRequest('http://shop.example/s/not-a-token'))
  const answers = await Promise.all(Array.from({ length: 121 }, asked))
  expect(answers.filter(({ status }) => status === 429)).toHaveLength(1)
  expect(Number(answers.at(-1)?.headers.get('Retry-After'))).toBeGreaterThan(0)
})

it('each deed that asks for the password again is a deed of the app', () => {
  const files = readdirSync('app', { recursive: true, encoding: 'utf8' })
    .map((file) => join('app', file))
    .filter((file) => /\.ts$/.test(file) && existsSync(file))
  const code = files.map((file) => readFileSync(file, 'utf8')).join('\n')
  const isDeed = (name: string) => new RegExp(`(defineAction\\(\\s*|refuseUnlessAsked\\()'${name}'`).test(code)
  expect([...asksAgain].filter((name) => !isDeed(name))).toEqual([])
})

it('every route that gives records of the shop as a file asks for the password again', () => {
  const routes = readdirSync('app/api', { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('route.ts'))
    .map((file) => readFileSync(join('app/api', file), 'utf8'))
    .filter((code) => /fileAnswer\(|text\/csv|application\/gzip/.test(code))
  expect(routes).toHaveLength(3)
  const deeds = routes.map((code) => /refuseUnlessAsked\('(\w+)'\)/.exec(code)?.[1] ?? '')
  expect(deeds.filter((deed) => !asksAgain.has(deed))).toEqual([])
})
