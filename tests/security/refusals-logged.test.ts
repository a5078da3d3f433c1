import { randomUUID } from 'node:crypto'
import { encode } from 'next-auth/jwt'
import { NextRequest } from 'next/server'
import { beforeAll, expect, it, vi } from 'vitest'
import { resetPasswordAction } from '@/app/(sign-in)/reset/[token]/actions'
import { newFactorKey } from '@/lib/data/factor-codes'
import { sealKey } from '@/lib/data/second-factor'
import { openSession } from '@/lib/data/sessions'
import { demoPassword } from '@/lib/demo/people'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { authOptions } from '@/lib/web/auth-options'
import { refusalOf } from '@/lib/web/error-to-response'
import { peerHeader } from '@/lib/web/peer-address'
import { requestIdHeader } from '@/lib/web/request-id'
import { requirePerson } from '@/lib/web/require-actor'
import { sessionCookieName } from '@/lib/web/session-cookie'
import { proxy } from '@/proxy'
import { staffedShop, type Staffed } from '../use-cases/people/staff'
import { enrolled, type Device } from '../use-cases/tablets/enrolled'

const { asked, jar, logged } = vi.hoisted(() => ({
  asked: new Headers(),
  jar: new Map<string, string>(),
  logged: [] as Record<string, unknown>[],
}))
vi.mock('next/headers', () => ({
  headers: async () => asked,
  cookies: async () => ({
    get: (name: string) => (jar.has(name) ? { value: jar.get(name) } : undefined),
    set: () => undefined,
  }),
}))
vi.mock('@/lib/data/log', () => {
  const note = (line: Record<string, unknown>) => void logged.push(line)
  return { log: { error: note, warn: note, info: note } }
})

const secret = 'a secret of at least thirty-two characters'
const from = { address: '10.0.0.7', request: 'K7Q4-MR9T' }
/** All that is typed or held here and must not stand in the log. */
const typed = {
  password: 'a-password-typed-in-vain',
  asName: 'a-password-typed-as-the-name',
  code: 'a-code-typed-in-vain',
  pin: '918273',
  link: 'a-link-of-thirty-two-characters-',
  foreign: 'sent-by-another-site',
}

let shop: Staffed
let device: Device
let session: string

beforeAll(async () => {
  process.env.NEXTAUTH_SECRET = secret
  shop = await staffedShop()
  device = await enrolled(shop.staff.orla)
  session = await encode({ token: { sid: await openSession(shop.staff.dov.personId, new Date()) }, secret })
  const { personId } = shop.staff.orla
  const factorKey = sealKey(personId, newFactorKey())
  await shop.database.client.person.update({ where: { id: personId }, data: { factorKey } })
  asked.set(peerHeader, from.address)
  asked.set(requestIdHeader, from.request)
}, 60_000)

type Provider = { readonly options: { readonly authorize: (credentials: object) => Promise<unknown> } }
const authorize = (at: 0 | 1, credentials: object) =>
  (authOptions(() => undefined).providers as unknown as Provider[])[at]?.options.authorize(credentials)

/** What one refused deed writes: exactly one line. */
async function lineOf(deed: () => unknown): Promise<Record<string, unknown>> {
  const before = logged.length
  await Promise.resolve()
    .then(deed)
    .catch(() => undefined)
  await vi.waitFor(() => expect(logged).toHaveLength(before + 1))
  return logged[before] ?? {}
}

it('each refusal is one line with who, from where, what and which request, and nothing that was typed', async () => {
  const { dov, orla } = shop.staff
  expect(await lineOf(() => authorize(0, { name: 'dov', password: typed.password, code: '' }))).toEqual({
    ...{ event: 'sign-in refused', why: 'wrong', personId: dov.personId },
    ...from,
  })
  expect(await lineOf(() => authorize(0, { name: typed.asName, password: typed.password, code: '' }))).toEqual({
    ...{ event: 'sign-in refused', why: 'wrong', personId: null },
    ...from,
  })
  expect(await lineOf(() => authorize(0, { name: 'orla', password: demoPassword, code: typed.code }))).toEqual({
    ...{ event: 'sign-in refused', why: 'wrong-code', personId: orla.personId },
    ...from,
  })
  jar.set('brasstag-tablet', device.token)
  expect(await lineOf(() => authorize(1, { personId: dov.personId, pin: typed.pin }))).toEqual({
    ...{ event: 'PIN refused', why: 'wrong', personId: dov.personId, tabletId: device.tabletId },
    ...from,
  })
  jar.clear()

  jar.set(sessionCookieName(), session)
  asked.set('x-here', `/back-room/people?find=${typed.asName}`)
  expect(await lineOf(() => requirePerson('person.change'))).toEqual({
    ...{ event: 'refused', code: 'not-allowed', personId: dov.personId, path: '/back-room/people' },
    ...from,
  })
  jar.clear()

  for (const [path, deed] of [
    ['/s/', () => seeByLink(typed.link, new Date()).catch(refusalOf)],
    ['/reset/', () => resetPasswordAction(resetWith(typed.link))],
  ] as const) {
    asked.set('x-here', `${path}${typed.link}`)
    expect(await lineOf(deed)).toEqual({
      ...{ event: 'dead link', code: 'not-found', personId: null, path: `${path}…` },
      ...from,
    })
  }

  const foreign = { origin: `https://${typed.foreign}.example`, host: 'shop.example', [peerHeader]: from.address }
  const posted = new NextRequest(`http://shop.example/counter?x=${typed.asName}`, { method: 'POST', headers: foreign })
  let answer: Response | undefined
  const line = await lineOf(async () => void (answer = await proxy(posted)))
  expect(line).toEqual({
    ...{ event: 'refused at the door', status: 403, address: from.address, path: '/counter', method: 'POST' },
    request: answer?.headers.get(requestIdHeader),
  })

  const all = JSON.stringify(logged)
  const secrets = [...Object.values(typed), demoPassword, device.token, session, secret]
  expect(secrets.filter((one) => all.includes(one))).toEqual([])
})

const resetWith = (token: string) => ({
  op: randomUUID(),
  input: { token, password: typed.password, again: typed.password },
})
