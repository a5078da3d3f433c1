import { beforeEach, describe, expect, test, vi } from 'vitest'
import * as passwords from '@/lib/data/passwords'
import { actorOfSession } from '@/lib/data/sessions'
import { demoPassword } from '@/lib/demo/people'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { signIn, type SignInAsked } from '@/lib/use-cases/people/sign-in'
import { seedShop } from '@/lib/demo/shop'
import { testDatabase } from '@/tests/setup/database'
import { now, staffedShop, type Staffed } from './staff'

let shop: Staffed
beforeEach(async () => {
  vi.restoreAllMocks()
  shop = await staffedShop()
})

const asked: SignInAsked = {
  ...{ name: 'dov', password: demoPassword, code: '', browser: 'Firefox on Windows', address: '10.0.0.7' },
  ...{ mark: null, tabletToken: null, sessionId: null },
}
const after = (ms: number): Date => new Date(now.getTime() + ms)
const right = (more: Partial<SignInAsked> = {}, at = now) => signIn({ ...asked, ...more }, at)
const wrong = (more: Partial<SignInAsked> = {}, at = now) => right({ password: 'a guess at it', ...more }, at)

/** The mark of a browser that this person has signed in with. */
async function marked(name = 'dov'): Promise<string> {
  const tried = await right({ name, address: '10.0.0.20' })
  if (tried.kind !== 'in') throw new Error(tried.kind)
  return tried.mark
}

/** Hashing is what costs: here it is only counted, and every password is wrong. */
const countedHashes = () => vi.spyOn(passwords, 'passwordFits').mockResolvedValue(false)

describe('guesses', () => {
  test('three hundred at the same moment: five are looked at', async () => {
    const hashed = countedHashes()
    const answers = await Promise.all(Array.from({ length: 300 }, () => wrong()))
    expect(hashed).toHaveBeenCalledTimes(5)
    expect(answers.filter(({ kind }) => kind === 'wrong')).toHaveLength(5)
    expect(answers.filter(({ kind }) => kind === 'wait')).toHaveLength(295)
  })

  test('the right password does not get through while its count waits, and does afterwards', async () => {
    countedHashes()
    for (let time = 0; time < 5; time += 1) await wrong()
    vi.restoreAllMocks()
    expect(await right({}, after(14_999))).toMatchObject({ kind: 'wait', waitMs: 1 })
    expect(await right({}, after(15_000))).toMatchObject({ kind: 'in' })
  })

  test('at one name leave another name at that address alone, until thirty were wrong there', async () => {
    countedHashes()
    for (const name of ['a', 'b', 'c', 'd', 'e', 'f']) for (let time = 0; time < 5; time += 1) await wrong({ name })
    expect(await wrong({ name: 'g' })).toMatchObject({ kind: 'wait' })
    expect(await wrong({ name: 'g', address: '10.0.0.8' })).toMatchObject({ kind: 'wrong' })
  })

  test('from many addresses at one name wait too after thirty', async () => {
    const hashed = countedHashes()
    for (let at = 0; at < 40; at += 1) await wrong({ address: `10.0.1.${at}` })
    expect(hashed).toHaveBeenCalledTimes(30)
  })

  test('a name that nobody has is answered like one that somebody has', async () => {
    countedHashes()
    for (const name of ['dov', 'nobody']) {
      const kinds = []
      for (let time = 0; time < 7; time += 1) kinds.push((await wrong({ name })).kind)
      expect(kinds).toEqual([...Array(5).fill('wrong'), 'wait', 'wait'])
    }
  })

  test('a name in capitals or with spaces around it is the same name', async () => {
    countedHashes()
    for (const name of ['dov', 'DOV', ' dov ', 'Dov', 'dOv']) expect((await wrong({ name })).kind).toBe('wrong')
    expect((await wrong({ name: 'DoV' })).kind).toBe('wait')
  })

  test('the count outlives a start of the server: it is in the database', async () => {
    countedHashes()
    await wrong()
    expect(await shop.database.client.signInTries.findMany({ orderBy: { kind: 'asc' } })).toMatchObject([
      { kind: 'address', name: '', place: '10.0.0.7', wrong: 1 },
      { kind: 'here', name: 'dov', place: '10.0.0.7', wrong: 1 },
      { kind: 'name', name: 'dov', place: '', wrong: 1 },
    ])
  })

  test('made-up names do not fill the table: what is a day old goes when something new comes', async () => {
    countedHashes()
    for (let at = 0; at < 20; at += 1) await wrong({ name: `made-up ${at}` })
    await wrong({ name: 'next day' }, after(25 * 60 * 60 * 1000))
    expect(await shop.database.client.signInTries.count()).toBe(3)
  })
})

describe('nobody is shut out by strangers', () => {
  test('a browser that this person signed in with still gets in; that of somebody else does not count', async () => {
    const [mine, others] = [await marked(), await marked('ines')]
    countedHashes()
    for (let time = 0; time < 60; time += 1) await wrong({ address: `10.0.2.${time % 12}` }, after(time))
    vi.restoreAllMocks()
    expect(await right({ mark: others, address: '10.0.2.1' }, after(60))).toMatchObject({ kind: 'wait' })
    expect(await right({ mark: mine, address: '10.0.2.1' }, after(60))).toMatchObject({ kind: 'in', mark: mine })
  })

  test('another address still gets in after five wrong ones here', async () => {
    countedHashes()
    for (let time = 0; time < 20; time += 1) await wrong()
    vi.restoreAllMocks()
    expect(await right({ address: '10.0.0.9' })).toMatchObject({ kind: 'in' })
  })

  test('on a browser of one’s own ten wrong ones are free, then it waits as well', async () => {
    const mark = await marked()
    const hashed = countedHashes()
    await Promise.all(Array.from({ length: 40 }, () => wrong({ mark })))
    expect(hashed).toHaveBeenCalledTimes(10)
  })

  test('a person who signs in there does not clear the way for guesses at other names', async () => {
    countedHashes()
    for (let time = 0; time < 29; time += 1) await wrong({ name: `n${time % 6}` })
    vi.restoreAllMocks()
    await right()
    const count = { kind_name_place: { kind: 'address', name: '', place: '10.0.0.7' } }
    expect(await shop.database.client.signInTries.findUnique({ where: count })).toMatchObject({ wrong: 29 })
  })
})

describe('a sign-in', () => {
  test('opens a session that says where from, and ends the one that was open in this browser, whoever’s', async () => {
    const first = await right({ name: 'ines' })
    if (first.kind !== 'in') throw new Error(first.kind)
    const second = await right({ sessionId: first.sessionId, mark: first.mark }, after(1000))
    if (second.kind !== 'in') throw new Error(second.kind)
    expect(await actorOfSession(first.sessionId, after(2000))).toBeNull()
    expect(await actorOfSession(second.sessionId, after(2000))).toMatchObject({ name: 'Dov Marrick' })
    const row = await shop.database.client.session.findUnique({ where: { id: second.sessionId } })
    expect(row).toMatchObject({ browser: 'Firefox on Windows', address: '10.0.0.7' })
    expect(second.mark).toBe(first.mark)
  })

  test('a wrong one ends nothing', async () => {
    const first = await right()
    if (first.kind !== 'in') throw new Error(first.kind)
    await wrong({ sessionId: first.sessionId })
    expect(await actorOfSession(first.sessionId, after(1))).not.toBeNull()
  })

  test('somebody retired is answered like a wrong password; what is too long is not hashed', async () => {
    await retirePerson(shop.staff.orla, { personId: shop.staff.dov.personId, version: 1, retired: true }, { now })
    expect(await right()).toEqual({ kind: 'wrong' })
    const hashed = countedHashes()
    expect(await right({ password: 'x'.repeat(201) })).toEqual({ kind: 'wrong' })
    expect(await right({ name: 'x'.repeat(101) })).toEqual({ kind: 'wrong' })
    expect(hashed).not.toHaveBeenCalled()
  })
})

/** PostgreSQL runs these side by side, where SQLite takes one after the other. */
test('on PostgreSQL: of forty guesses at the same moment five are looked at', async () => {
  await testDatabase('postgresql')
  await seedShop(now)
  const hashed = countedHashes()
  await Promise.all(Array.from({ length: 40 }, () => wrong()))
  expect(hashed.mock.calls.length).toBeGreaterThan(0)
  expect(hashed.mock.calls.length).toBeLessThanOrEqual(5)
})
