import { beforeEach, describe, expect, test } from 'vitest'
import { asksAgain, wasAskedLately } from '@/lib/core/access/asks-again'
import type { Actor } from '@/lib/core/access/roles'
import { passwordFits } from '@/lib/data/passwords'
import { actorOfSession, openPinSession, openSession, signedInBy } from '@/lib/data/sessions'
import { demoPassword } from '@/lib/demo/people'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { changeOwnPassword } from '@/lib/use-cases/people/change-own-password'
import { confirmPassword } from '@/lib/use-cases/people/confirm-password'
import { endASession } from '@/lib/use-cases/people/end-a-session'
import { liftPersonWaits, seeWaits } from '@/lib/use-cases/people/lift-waits'
import { makeResetLink } from '@/lib/use-cases/people/make-reset-link'
import { resetLinkFromConsole } from '@/lib/use-cases/people/reset-link-from-console'
import { resetPassword, seeResetLink } from '@/lib/use-cases/people/reset-password'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { seeSessions } from '@/lib/use-cases/people/see-sessions'
import { signIn } from '@/lib/use-cases/people/sign-in'
import { after, enrolled } from '../tablets/enrolled'
import { now, resetToken, staffedShop, type Staffed } from './staff'

const minuteMs = 60_000
const next = 'a plum deck and a square hole'

let shop: Staffed
let dov: Actor
beforeEach(async () => {
  process.env.NEXTAUTH_SECRET = 'a secret of at least thirty-two characters'
  shop = await staffedShop()
  dov = shop.staff.dov
})

const row = (personId: string) => shop.database.client.person.findUniqueOrThrow({ where: { id: personId } })
const asked = { code: '', browser: 'Firefox on Linux', mark: null, tabletToken: null, sessionId: null }
const tryIn = (name: string, password: string, at = now, address = '10.0.0.7') =>
  signIn({ ...asked, name, password, address }, at)

describe('one’s own password', () => {
  test('changes with the old one, and only then', async () => {
    await expect(
      changeOwnPassword(dov, { password: 'not it at all', next, again: next }, { now }),
    ).rejects.toMatchObject({ refusal: { fields: { password: 'This is not your password.' } } })
    expect((await tryIn('dov', demoPassword)).kind).toBe('in')
    await changeOwnPassword(dov, { password: demoPassword, next, again: next }, { now })
    expect((await tryIn('dov', demoPassword)).kind).toBe('wrong')
    expect((await tryIn('dov', next)).kind).toBe('in')
  })

  test('is none of the names that everybody in the shop knows', async () => {
    for (const guess of ['dov2026!', 'DovMarrick1', 'marrickdov', 'letmein2026']) {
      await expect(
        changeOwnPassword(dov, { password: demoPassword, next: guess, again: guess }, { now }),
      ).rejects.toMatchObject({ refusal: { code: 'invalid', fields: { next: expect.any(String) } } })
    }
  })

  test('guesses at it are counted before they are looked at: ten, then a wait that says how long', async () => {
    const guess = () => confirmPassword(dov, { password: 'a guess at it', sessionId: 's' }, { now })
    const answers = await Promise.allSettled(Array.from({ length: 14 }, guess))
    const codes = answers.map((one) => (one.status === 'rejected' ? (one.reason as Refused).refusal.code : 'in'))
    expect(codes.filter((code) => code === 'invalid')).toHaveLength(10)
    expect(codes.filter((code) => code === 'too-many')).toHaveLength(4)
    await expect(guess()).rejects.toMatchObject({ refusal: { code: 'too-many', retryAfterS: 15 } })
  })
})
type Refused = { readonly refusal: { readonly code: string } }

describe('a link to choose a password', () => {
  const use = (token: string, at = now) => resetPassword({ token, password: next, again: next }, { now: at })

  test('works once; the owner who made it knows nothing of the password, and only a hash of it is kept', async () => {
    const token = await resetToken(shop.staff.orla, dov.personId)
    expect(token).toMatch(/^[\w-]{32}$/)
    expect(await seeResetLink(token, now)).toEqual({ name: 'Dov Marrick', signIn: 'dov' })
    const kept = JSON.stringify([
      await shop.database.client.resetLink.findMany(),
      await shop.database.client.auditEntry.findMany(),
      await shop.database.client.operation.findMany(),
    ])
    expect(kept).not.toContain(token)
    await use(token)
    expect((await tryIn('dov', next)).kind).toBe('in')
    await expect(use(token)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    await expect(seeResetLink(token, now)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
  })

  test('two that use it at the same moment: one does', async () => {
    const token = await resetToken(shop.staff.orla, dov.personId)
    const answers = await Promise.allSettled([use(token), use(token), use(token)])
    expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  })

  test('ends after a day, when another is made, when the password changes, when its person is retired', async () => {
    const { orla } = shop.staff
    const first = await resetToken(orla, dov.personId)
    await expect(use(first, after(24 * 60 * minuteMs))).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    const second = await resetToken(orla, dov.personId)
    await expect(use(first)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    await changeOwnPassword(dov, { password: demoPassword, next, again: next }, { now })
    await expect(use(second)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    const third = await resetToken(orla, dov.personId)
    await retirePerson(orla, { personId: dov.personId, version: 1, retired: true }, { now })
    await expect(use(third)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    await expect(makeResetLink(orla, { personId: dov.personId }, { now })).rejects.toMatchObject({
      refusal: { code: 'wrong-state' },
    })
  })

  test('a password that anyone would try does not use it up', async () => {
    const token = await resetToken(shop.staff.orla, dov.personId)
    await expect(resetPassword({ token, password: 'aaaaaaaa', again: 'aaaaaaaa' }, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid' },
    })
    await use(token)
  })

  test('somebody who was added without a password gets in by it, and not before', async () => {
    const newcomer = { name: 'Wilf Tarrow', signIn: 'wilf', roles: ['machinist' as const], grants: [], password: '' }
    const { personId } = await addPerson(shop.staff.orla, newcomer, { now })
    expect(await passwordFits((await row(personId)).passwordHash, '')).toBe(false)
    expect((await tryIn('wilf', ' ')).kind).toBe('wrong')
    await use(await resetToken(shop.staff.orla, personId))
    expect((await tryIn('wilf', next)).kind).toBe('in')
  })

  test('what never was one opens nothing', async () => {
    for (const token of ['', 'x', 'x'.repeat(32), 'x'.repeat(5000), '../../etc']) {
      await expect(use(token)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    }
  })
})

describe('the list of sessions', () => {
  test('says where each was opened; one’s own and for the owner anybody’s, newest first', async () => {
    const device = await enrolled(shop.staff.orla)
    const first = await tryIn('dov', demoPassword)
    const pin = await openPinSession(dov.personId, { tabletId: device.tabletId, idleMs: 5 * minuteMs }, after(1))
    if (first.kind !== 'in') throw new Error(first.kind)
    const here = await openSession(dov.personId, after(2))
    const list = await seeSessions(dov, dov.personId, here, after(3))
    expect(list).toMatchObject([
      { id: here, here: true, tablet: null, browser: '' },
      { id: pin, here: false, tablet: 'Tablet at the mill' },
      { id: first.sessionId, here: false, tablet: null, browser: 'Firefox on Linux', address: '10.0.0.7' },
    ])
    expect(await seeSessions(shop.staff.orla, dov.personId, null, after(3))).toHaveLength(3)
    await expect(seeSessions(dov, shop.staff.orla.personId, here, now)).rejects.toMatchObject({
      refusal: { code: 'not-allowed' },
    })
    // The tablet was left alone for longer than it may be.
    expect(await seeSessions(dov, dov.personId, here, after(6 * minuteMs))).toHaveLength(2)
  })

  test('a person ends their own, the owner anybody’s, nobody else’s is there for others', async () => {
    const [mine, owners] = [await openSession(dov.personId, now), await openSession(shop.staff.orla.personId, now)]
    await expect(endASession(dov, { sessionId: owners }, { now })).rejects.toMatchObject({
      refusal: { code: 'not-found' },
    })
    await endASession(dov, { sessionId: mine }, { now })
    expect(await actorOfSession(mine, after(1))).toBeNull()
    expect(await actorOfSession(owners, after(1))).not.toBeNull()
    const other = await openSession(dov.personId, now)
    await endASession(shop.staff.orla, { sessionId: other }, { now })
    expect(await actorOfSession(other, after(1))).toBeNull()
  })
})

describe('what waits after wrong tries', () => {
  test('is seen by the owner and lifted, at the address too', async () => {
    for (let time = 0; time < 5; time += 1) await tryIn('dov', 'a guess at it')
    expect(await seeWaits(shop.staff.orla, dov.personId, after(5000))).toEqual([
      { kind: 'here', place: '10.0.0.7', wrong: 5, waitMs: 10_000 },
    ])
    expect((await tryIn('dov', demoPassword)).kind).toBe('wait')
    await liftPersonWaits(shop.staff.orla, { personId: dov.personId }, { now })
    expect(await seeWaits(shop.staff.orla, dov.personId, now)).toEqual([])
    expect((await tryIn('dov', demoPassword)).kind).toBe('in')
  })
})

describe('the password once more', () => {
  test('is asked ten minutes after it was typed, in each session by itself, and at once of a PIN', async () => {
    const at = { kind: 'password', createdAt: now, askedAt: null }
    expect(wasAskedLately(at, after(10 * minuteMs - 1))).toBe(true)
    expect(wasAskedLately(at, after(10 * minuteMs))).toBe(false)
    expect(wasAskedLately(at, after(-1))).toBe(false)
    expect(wasAskedLately({ ...at, askedAt: after(60 * minuteMs) }, after(65 * minuteMs))).toBe(true)
    expect(wasAskedLately({ ...at, kind: 'pin' }, now)).toBe(false)
  })

  test('typed right it holds for this session and no other', async () => {
    const [one, other] = [await openSession(dov.personId, now), await openSession(dov.personId, now)]
    const late = after(30 * minuteMs)
    const lately = async (session: string) => (await signedInBy(session, null, late))?.askedLately
    expect([await lately(one), await lately(other)]).toEqual([false, false])
    await confirmPassword(dov, { password: demoPassword, sessionId: one }, { now: late })
    expect([await lately(one), await lately(other)]).toEqual([true, false])
    await confirmPassword(
      dov,
      { password: demoPassword, sessionId: await openSession(shop.staff.orla.personId, now) },
      { now: late },
    )
    expect(await shop.database.client.session.count({ where: { askedAt: { not: null } } })).toBe(1)
  })

  test('is asked for people, rights, links, second factors, tablets, mail and what is taken along', () => {
    for (const deed of ['addPerson', 'changePerson', 'makeResetLink', 'clearFactor', 'makeTabletCode', 'exportBooks']) {
      expect(asksAgain.has(deed)).toBe(true)
    }
    expect(asksAgain.has('tickStep')).toBe(false)
  })
})

describe('a link from the console', () => {
  const link = (signInName: string, withoutFactor = false) =>
    resetLinkFromConsole({ signIn: signInName, withoutFactor }, now)
  const tokenIn = ({ path }: { path: string }): string => path.replace('/reset/', '')

  test('lets the only owner choose a new password; the second factor stays unless it is said to go', async () => {
    const { id } = await shop.database.client.person.findFirstOrThrow({ where: { signIn: 'orla' } })
    await shop.database.client.person.update({ where: { id }, data: { factorKey: 'sealed' } })
    await resetPassword({ token: tokenIn(await link(' ORLA ')), password: next, again: next }, { now })
    expect((await tryIn('orla', next)).kind).toBe('code')
    const second = tokenIn(await link('orla', true))
    expect((await tryIn('orla', next)).kind).toBe('in')
    const third = tokenIn(await link('orla'))
    await expect(seeResetLink(second, now)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    await expect(seeResetLink(third, new Date(now.getTime() + 24 * 60 * minuteMs))).rejects.toThrow('does not work')
    const trail = await shop.database.client.auditEntry.findMany({
      where: { actorId: 'console' },
      orderBy: { seq: 'asc' },
    })
    expect(trail.map(({ action }) => action)).toEqual([
      ...['person.make-reset-link', 'person.make-reset-link', 'person.clear-factor', 'person.make-reset-link'],
    ])
    expect(JSON.stringify(trail)).not.toContain(third)
  })

  test('is refused in words for who is not on record, and for who is retired', async () => {
    await expect(link('nobody')).rejects.toThrow('Nobody signs in here as “nobody”. Owners sign in as: orla.')
    await retirePerson(
      shop.staff.orla,
      { personId: dov.personId, version: (await row(dov.personId)).version, retired: true },
      { now },
    )
    await expect(link('dov')).rejects.toThrow('is retired')
    expect(await shop.database.client.resetLink.count({ where: { endedAt: null, byId: 'console' } })).toBe(0)
  })
})
