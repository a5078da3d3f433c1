import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { passwordFits } from '@/lib/data/passwords'
import { actorOf, actorOfSession, openSession } from '@/lib/data/sessions'
import { demoPassword } from '@/lib/demo/people'
import { addPersonSchema } from '@/lib/schemas/person'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { changePerson } from '@/lib/use-cases/people/change-person'
import { changeOwnPassword } from '@/lib/use-cases/people/change-own-password'
import { makeResetLink } from '@/lib/use-cases/people/make-reset-link'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { seePeople } from '@/lib/use-cases/people/see-people'
import { expectRefused, newPasswordByLink, notOwners, now, staffedShop, type Staffed } from './staff'

const later = new Date('2026-03-02T15:05:00Z')
const password = 'a plum deck and a square hole'
const newcomer = addPersonSchema.parse({
  name: 'Wilf Tarrow',
  signIn: 'Wilf',
  roles: ['machinist'],
  grants: [],
  password,
})

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})

const rows = () => shop.database.client.person.findMany({ orderBy: { id: 'asc' } })
const row = (personId: string) => shop.database.client.person.findUniqueOrThrow({ where: { id: personId } })
const trail = () => shop.database.client.auditEntry.findMany({ orderBy: { seq: 'asc' } })
const makeOwner = async ({ personId }: Actor) => {
  const { name, version } = await row(personId)
  await changePerson(shop.staff.orla, { personId, version, name, roles: ['owner'], grants: [] }, { now })
  return actorOf(await row(personId))
}

describe('only the owner', () => {
  const deeds = {
    'adds people': (actor: Actor) => addPerson(actor, newcomer, { now }),
    'changes rights': (actor: Actor) =>
      changePerson(
        actor,
        { personId: actor.personId, version: 1, name: actor.name, roles: ['owner'], grants: ['waive'] },
        { now },
      ),
    'makes links to choose a password': (actor: Actor) =>
      makeResetLink(actor, { personId: shop.staff.orla.personId }, { now }),
    'retires people': (actor: Actor) =>
      retirePerson(actor, { personId: shop.staff.ines.personId, version: 1, retired: true }, { now }),
    'sees the list': (actor: Actor) => seePeople(actor),
  }
  const cases = notOwners.flatMap((who) => Object.entries(deeds).map(([what, deed]) => ({ who, what, deed })))

  test.each(cases)('$what: $who is refused', async ({ who, deed }) => {
    const look = async () => ({ people: await rows(), trail: await trail() })
    await expectRefused(shop.staff[who], deed, look)
  })
})

describe('adding', () => {
  test('keeps the sign-in name in small letters, the password only as a hash', async () => {
    const { personId } = await addPerson(shop.staff.orla, newcomer, { now })
    const person = await row(personId)
    expect(person).toMatchObject({ name: 'Wilf Tarrow', signIn: 'wilf', roles: 'machinist', grants: '' })
    expect(person.passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    expect(await passwordFits(person.passwordHash, password)).toBe(true)
  })

  test('refuses a sign-in name that is taken', async () => {
    await expect(addPerson(shop.staff.orla, { ...newcomer, signIn: 'dov' }, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { signIn: expect.any(String) } },
    })
  })

  test('refuses a password that everybody tries', async () => {
    const before = await rows()
    await expect(addPerson(shop.staff.orla, { ...newcomer, password: 'Password123' }, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { password: expect.any(String) } },
    })
    expect(await rows()).toEqual(before)
  })
})

describe('what ends the sessions of a person, everywhere', () => {
  const endings: Record<string, (who: { personId: string; version: number; name: string }) => Promise<unknown>> = {
    'other roles': ({ personId, version, name }) =>
      changePerson(shop.staff.orla, { personId, version, name, roles: ['counter'], grants: [] }, { now: later }),
    'other grants': ({ personId, version, name }) =>
      changePerson(
        shop.staff.orla,
        { personId, version, name, roles: ['machinist'], grants: ['waive'] },
        { now: later },
      ),
    'a new password by a link': ({ personId }) => newPasswordByLink(shop.staff.orla, personId, password, later),
    'a new password of one’s own': ({ personId, name }) =>
      changeOwnPassword(
        { personId, name, roles: ['machinist'], grants: [] },
        { password: demoPassword, next: password, again: password },
        { now: later },
      ),
    retiring: ({ personId, version }) =>
      retirePerson(shop.staff.orla, { personId, version, retired: true }, { now: later }),
  }

  test.each(Object.keys(endings))('%s', async (ending) => {
    const { personId } = shop.staff.dov
    const sessions = [await openSession(personId, now), await openSession(personId, now)]
    const others = await openSession(shop.staff.ines.personId, now)
    await endings[ending]!(await row(personId).then(({ id, version, name }) => ({ personId: id, version, name })))
    for (const session of sessions) expect(await actorOfSession(session, later)).toBeNull()
    expect(await actorOfSession(others, later)).not.toBeNull()
  })

  test('a new name alone does not', async () => {
    const { personId } = shop.staff.dov
    const session = await openSession(personId, now)
    const { version } = await row(personId)
    const input = { personId, version, name: 'Dov M.', roles: ['machinist' as const], grants: [] }
    await changePerson(shop.staff.orla, input, { now: later })
    expect(await actorOfSession(session, later)).toMatchObject({ name: 'Dov M.' })
  })
})

test('after a demotion nothing goes on under the old rights: not by the open session, not by signing in again', async () => {
  const second = await makeOwner(shop.staff.tamsin)
  const session = await openSession(second.personId, now)
  expect(await actorOfSession(session, now)).toMatchObject({ roles: ['owner'] })

  const { name, version } = await row(second.personId)
  const demotion = { personId: second.personId, version, name, roles: ['counter' as const], grants: [] }
  await changePerson(shop.staff.orla, demotion, { now: later })

  expect(await actorOfSession(session, later)).toBeNull()
  const again = await actorOfSession(await openSession(second.personId, later), later)
  expect(again).toMatchObject({ roles: ['counter'] })
  await expectRefused(again!, (actor) => addPerson(actor, newcomer, { now: later }), rows)
})

describe('the last owner', () => {
  test('cannot be demoted or retired, and nothing changes', async () => {
    const { personId, name } = shop.staff.orla
    const before = await rows()
    const demotion = { personId, version: 1, name, roles: ['counter' as const], grants: [] }
    await expect(changePerson(shop.staff.orla, demotion, { now })).rejects.toMatchObject({
      refusal: { code: 'wrong-state' },
    })
    await expect(retirePerson(shop.staff.orla, { personId, version: 1, retired: true }, { now })).rejects.toMatchObject(
      { refusal: { code: 'wrong-state' } },
    )
    expect(await rows()).toEqual(before)
  })

  test('may go when there is another; then the other is the last', async () => {
    const second = await makeOwner(shop.staff.tamsin)
    const { personId } = shop.staff.orla
    await retirePerson(second, { personId, version: 1, retired: true }, { now })
    const { version } = await row(second.personId)
    await expect(
      retirePerson(second, { personId: second.personId, version, retired: true }, { now }),
    ).rejects.toMatchObject({ refusal: { code: 'wrong-state' } })
  })

  test('two owners who demote each other at once: one of them stays', async () => {
    const second = await makeOwner(shop.staff.tamsin)
    const first = shop.staff.orla
    const demote = async (by: Actor, whom: Actor) => {
      const { version, name } = await row(whom.personId)
      const input = { personId: whom.personId, version, name, roles: ['counter' as const], grants: [] }
      return changePerson(by, input, { now })
    }
    const answers = await Promise.allSettled([demote(first, second), demote(second, first)])
    expect(answers.map(({ status }) => status).toSorted()).toEqual(['fulfilled', 'rejected'])
    expect((await rows()).filter(({ roles }) => roles.includes('owner'))).toHaveLength(1)
  })
})

test('a change of what somebody else has changed is a conflict', async () => {
  const { personId, name } = shop.staff.dov
  const input = { personId, version: 1, name, roles: ['machinist' as const], grants: [] }
  await changePerson(shop.staff.orla, { ...input, name: 'Dov M.' }, { now })
  const before = await rows()
  await expect(changePerson(shop.staff.orla, { ...input, name: 'D. Marrick' }, { now })).rejects.toMatchObject({
    refusal: { code: 'conflict' },
  })
  expect(await rows()).toEqual(before)
})

test('a retired person comes back with the rights they had', async () => {
  const { personId } = shop.staff.ines
  await retirePerson(shop.staff.orla, { personId, version: 1, retired: true }, { now })
  // The form for name and rights on the same page is still up to date, and nobody is told of a conflict.
  expect(await row(personId)).toMatchObject({ retiredAt: now, version: 1 })
  await expect(retirePerson(shop.staff.orla, { personId, version: 1, retired: true }, { now })).rejects.toMatchObject({
    refusal: { code: 'conflict' },
  })
  await retirePerson(shop.staff.orla, { personId, version: 1, retired: false }, { now })
  expect(await row(personId)).toMatchObject({ retiredAt: null, roles: 'machinist' })
})

describe('a password leaves no trace', () => {
  beforeEach(() => {
    process.env.NEXTAUTH_SECRET = 'a secret of at least thirty-two characters'
  })
  const op = { id: '0195f6a0-0000-4000-8000-000000000001', hash: 'c0ffee' }

  test('not in the trail, not in the operation', async () => {
    const { personId } = await addPerson(shop.staff.orla, newcomer, { now, op })
    await newPasswordByLink(shop.staff.orla, personId, `${password}!`)
    const operations = await shop.database.client.operation.findMany()
    const kept = JSON.stringify([await trail(), operations])
    expect(kept).not.toContain(password)
    expect(kept).not.toContain('argon2')
    // A bare hash of the content would let whoever has a backup try passwords at speed.
    expect(operations.map(({ hash }) => hash)).not.toContain(op.hash)
  })

  test('the same operation again adds nobody; with other content it is refused', async () => {
    const first = await addPerson(shop.staff.orla, newcomer, { now, op })
    expect(await addPerson(shop.staff.orla, newcomer, { now, op })).toEqual(first)
    await expect(addPerson(shop.staff.orla, newcomer, { now, op: { ...op, hash: 'other' } })).rejects.toMatchObject({
      refusal: { code: 'operation-reused' },
    })
    expect((await rows()).filter(({ signIn }) => signIn === 'wilf')).toHaveLength(1)
  })
})
