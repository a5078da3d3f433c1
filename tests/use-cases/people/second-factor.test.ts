import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { codeOfStep, factorAddress, inBase32, stepOf, stepOfCode } from '@/lib/data/factor-codes'
import { openKey } from '@/lib/data/second-factor'
import { demoPassword } from '@/lib/demo/people'
import { seeAccount } from '@/lib/use-cases/people/see-account'
import {
  clearFactor,
  confirmFactor,
  dropOwnFactor,
  renewCodes,
  startFactor,
} from '@/lib/use-cases/people/second-factor'
import { signIn } from '@/lib/use-cases/people/sign-in'
import { after } from '../tablets/enrolled'
import { newPasswordByLink, now, staffedShop, type Staffed } from './staff'

const ascii = (text: string): Uint8Array => Buffer.from(text, 'ascii')

describe('published examples', () => {
  // RFC 4226, appendix D: the key "12345678901234567890", counters 0 to 9.
  test('codes by a counter', () => {
    const codes = Array.from({ length: 10 }, (_, counter) => codeOfStep(ascii('12345678901234567890'), counter))
    expect(codes).toEqual([
      ...['755224', '287082', '359152', '969429', '338314'],
      ...['254676', '287922', '162583', '399871', '520489'],
    ])
  })

  // RFC 6238, appendix B: eight digits, steps of 30 s, keys of 20, 32 and 64 bytes of the same digits.
  test.each([
    [59, '94287082', '46119246', '90693936'],
    [1111111109, '07081804', '68084774', '25091201'],
    [1111111111, '14050471', '67062674', '99943326'],
    [1234567890, '89005924', '91819424', '93441116'],
    [2000000000, '69279037', '90698825', '38618901'],
    [20000000000, '65353130', '77737706', '47863826'],
  ])('codes by time, %i s', (seconds, sha1, sha256, sha512) => {
    const step = stepOf(new Date(seconds * 1000))
    const key = (bytes: number) => ascii('1234567890'.repeat(7).slice(0, bytes))
    expect(codeOfStep(key(20), step, 8, 'sha1')).toBe(sha1)
    expect(codeOfStep(key(32), step, 8, 'sha256')).toBe(sha256)
    expect(codeOfStep(key(64), step, 8, 'sha512')).toBe(sha512)
  })

  // RFC 4648, section 10, without the filling.
  test.each([
    ['', ''],
    ['f', 'MY'],
    ['fo', 'MZXQ'],
    ['foo', 'MZXW6'],
    ['foob', 'MZXW6YQ'],
    ['fooba', 'MZXW6YTB'],
    ['foobar', 'MZXW6YTBOI'],
  ])('"%s" in base 32', (text, written) => {
    expect(inBase32(ascii(text))).toBe(written)
  })

  test('the address of a QR code parts as an address does', () => {
    const url = new URL(factorAddress(ascii('foobar'), 'dov', 'Quennell: Heads & Co'))
    expect([url.protocol, url.host, decodeURIComponent(url.pathname)]).toEqual([
      'otpauth:',
      'totp',
      '/Quennell  Heads & Co:dov',
    ])
    expect(Object.fromEntries(url.searchParams)).toEqual({
      ...{ secret: 'MZXW6YTBOI', issuer: 'Quennell  Heads & Co' },
      ...{ algorithm: 'SHA1', digits: '6', period: '30' },
    })
  })
})

const stepMs = 30_000
/** The middle of a step, so that a test says which step it means. */
const at = (steps: number): Date => new Date((stepOf(now) + steps) * stepMs + stepMs / 2)

let shop: Staffed
let orla: Actor
beforeEach(async () => {
  process.env.NEXTAUTH_SECRET = 'a secret of at least thirty-two characters'
  shop = await staffedShop()
  orla = shop.staff.orla
})

const row = () => shop.database.client.person.findUniqueOrThrow({ where: { id: orla.personId } })

/** The key that the app of the person's phone got, and the recovery codes. */
async function setUp() {
  await startFactor(orla, {}, { now: at(0) })
  const key = openKey(orla.personId, (await row()).factorDraft) ?? ascii('')
  const { codes } = await confirmFactor(orla, { code: codeOfStep(key, stepOf(at(0))) }, { now: at(0) })
  return { key, codes, codeAt: (steps: number) => codeOfStep(key, stepOf(at(steps))) }
}

const tryIn = async (code: string, when = at(1), password = demoPassword) =>
  (
    await signIn(
      {
        ...{ name: 'orla', password, code, browser: '', address: '10.0.0.7' },
        ...{ mark: null, tabletToken: null, sessionId: null },
      },
      when,
    )
  ).kind

describe('a second factor', () => {
  test('is in use once a code of it was typed, and then the password alone opens nothing', async () => {
    await startFactor(orla, {}, { now })
    expect(await tryIn('')).toBe('in')
    await expect(confirmFactor(orla, { code: '000000' }, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid' },
    })
    const { codeAt } = await setUp()
    expect(await tryIn('')).toBe('code')
    expect(await tryIn(codeAt(1))).toBe('in')
    expect(await tryIn(codeAt(2), at(2), 'a guess at it')).toBe('wrong')
  })

  test('a code works once, one step early or late, and none before the last one that was taken', async () => {
    const { codeAt } = await setUp()
    expect(await tryIn(codeAt(0), at(0))).toBe('wrong-code') // the one that confirmed it
    expect(await tryIn(codeAt(3), at(1))).toBe('wrong-code') // two steps early
    expect(await tryIn(codeAt(2), at(1))).toBe('in')
    expect(await tryIn(codeAt(2), at(2))).toBe('wrong-code')
    expect(await tryIn(codeAt(1), at(2))).toBe('wrong-code')
    expect(await tryIn(codeAt(4), at(5))).toBe('in')
    expect(await tryIn(codeAt(6), at(8))).toBe('wrong-code') // two steps late
  })

  test('the same code twice at the same moment signs in once', async () => {
    const { codeAt } = await setUp()
    const kinds = await Promise.all([tryIn(codeAt(1)), tryIn(codeAt(1)), tryIn(codeAt(1))])
    expect(kinds.filter((kind) => kind === 'in')).toHaveLength(1)
  })

  test('guesses at the code wait after five, wherever they come from', async () => {
    await setUp()
    const kinds = []
    for (let time = 0; time < 7; time += 1) kinds.push(await tryIn('123123'))
    expect(kinds).toEqual([...Array(5).fill('wrong-code'), 'wait', 'wait'])
  })

  test('a recovery code works once in its place, typed in capitals or run together; new ones end the old', async () => {
    const { codes } = await setUp()
    expect(new Set(codes).size).toBe(10)
    // 24 signs of 29: 24 · log2(29) = 116 bits; 112 are what a plain hash needs.
    for (const code of codes) expect(code).toMatch(/^([a-z2-9]{4}-){5}[a-z2-9]{4}$/)
    expect(await tryIn((codes[0] ?? '').toUpperCase().replaceAll('-', ''))).toBe('in')
    expect(await tryIn(codes[0] ?? '')).toBe('wrong-code')
    expect((await seeAccount(orla)).codesLeft).toBe(9)
    const renewed = await renewCodes(orla, {}, { now })
    expect(await tryIn(codes[1] ?? '')).toBe('wrong-code')
    expect(await tryIn(renewed.codes[1] ?? '')).toBe('in')
  })

  test('neither key nor recovery codes lie open in the database', async () => {
    const { key, codes } = await setUp()
    const { client } = shop.database
    const kept = JSON.stringify([
      await client.person.findMany(),
      await client.recoveryCode.findMany(),
      await client.auditEntry.findMany(),
    ])
    for (const secret of [
      inBase32(key),
      Buffer.from(key).toString('base64url'),
      Buffer.from(key).toString('hex'),
      ...codes,
    ]) {
      expect(kept).not.toContain(secret)
    }
  })

  test('a key that was sealed for somebody else opens nothing', async () => {
    await setUp()
    expect(openKey(shop.staff.dov.personId, (await row()).factorKey)).toBeNull()
  })

  test('stays when the password is reset by a link: a link alone signs nobody in', async () => {
    const { codeAt } = await setUp()
    const next = 'a plum deck and a square hole'
    await newPasswordByLink(orla, orla.personId, next)
    expect(await tryIn('', at(1), next)).toBe('code')
    expect(await tryIn(codeAt(1), at(1), next)).toBe('in')
  })

  test('goes when its person gives it up, or the owner takes it away', async () => {
    await setUp()
    await dropOwnFactor(orla, {}, { now })
    expect(await tryIn('')).toBe('in')
    expect(await shop.database.client.recoveryCode.count()).toBe(0)
    await setUp()
    await clearFactor(orla, { personId: orla.personId }, { now })
    expect(await tryIn('', after(1))).toBe('in')
  })
})

test('no code fits where there is no such step', () => {
  expect(stepOfCode(ascii('12345678901234567890'), '', null, now)).toBeNull()
  expect(stepOfCode(ascii('12345678901234567890'), 'abcdef', null, now)).toBeNull()
})
