import { beforeEach, describe, expect, test } from 'vitest'
import { changeTabletSchema } from '@/lib/schemas/tablet'
import { changeTablet } from '@/lib/use-cases/tablets/change-tablet'
import { enrolTablet } from '@/lib/use-cases/tablets/enrol-tablet'
import { makeTabletCode } from '@/lib/use-cases/tablets/make-tablet-code'
import { revokeTablet } from '@/lib/use-cases/tablets/revoke-tablet'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { seeTablet, seeTablets } from '@/lib/use-cases/tablets/see-tablets'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'
import { after, enrolled, pinOf, sessionAt, signInAt, whoIs } from './enrolled'

const mill = { name: 'Tablet at the mill', station: 'deck-mill' as const }
const minuteMs = 60_000

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})

const tablets = () => shop.database.client.tablet.findMany({ orderBy: { id: 'asc' } })
const codes = () => shop.database.client.tabletCode.findMany({ orderBy: { id: 'asc' } })
const trail = () => shop.database.client.auditEntry.findMany({ orderBy: { seq: 'asc' } })
const invalidCode = { refusal: { code: 'invalid', fields: { code: expect.any(String) } } }

describe('a code', () => {
  test('makes one device a tablet; only hashes are kept', async () => {
    const made = await makeTabletCode(shop.staff.orla, mill, { now })
    expect(made).toMatchObject({ name: mill.name, endsAt: '2026-03-02T15:10:00.000Z' })
    expect(made.code).toMatch(/^[2-9A-HJKMNP-TW-Z]{4}-[2-9A-HJKMNP-TW-Z]{4}$/)
    const { tabletId, token } = await enrolTablet({ code: made.code }, { now: after(minuteMs) })
    expect(token).toMatch(/^[\w-]{32}$/)
    const [tablet] = await tablets()
    expect(tablet).toMatchObject({ id: tabletId, ...mill, byId: shop.staff.orla.personId, enrolledAt: after(minuteMs) })
    const kept = JSON.stringify([await tablets(), await codes(), await trail()])
    for (const secret of [made.code, made.code.replace('-', ''), token]) expect(kept).not.toContain(secret)
    expect((await trail()).slice(-2)).toMatchObject([
      { action: 'tablet-code.make', actorId: shop.staff.orla.personId },
      { action: 'tablet.enrol', actorId: shop.staff.orla.personId, subjectId: tabletId },
    ])
  })

  test('is the same in small letters, with spaces, run together', async () => {
    const { code } = await makeTabletCode(shop.staff.orla, mill, { now })
    await enrolTablet({ code: ` ${code.toLowerCase().replace('-', ' ')} ` }, { now })
    expect(await tablets()).toHaveLength(1)
  })

  test('works once', async () => {
    const { code } = await makeTabletCode(shop.staff.orla, mill, { now })
    await enrolTablet({ code }, { now })
    await expect(enrolTablet({ code }, { now })).rejects.toMatchObject(invalidCode)
    expect(await tablets()).toHaveLength(1)
  })

  test('works once, when two devices type it at the same moment', async () => {
    const { code } = await makeTabletCode(shop.staff.orla, mill, { now })
    const answers = await Promise.allSettled(Array.from({ length: 5 }, () => enrolTablet({ code }, { now })))
    expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    expect(await tablets()).toHaveLength(1)
  })

  test('lasts ten minutes and no longer', async () => {
    const { code } = await makeTabletCode(shop.staff.orla, mill, { now })
    await expect(enrolTablet({ code }, { now: after(10 * minuteMs) })).rejects.toMatchObject(invalidCode)
    await enrolTablet({ code }, { now: after(10 * minuteMs - 1) })
    expect(await tablets()).toHaveLength(1)
  })

  test('is good for nothing when its owner was retired since', async () => {
    const { code } = await makeTabletCode(shop.staff.orla, mill, { now })
    await shop.database.client.person.update({ where: { id: shop.staff.dov.personId }, data: { roles: 'owner' } })
    const orla = { personId: shop.staff.orla.personId, version: 1, retired: true }
    await retirePerson({ ...shop.staff.dov, roles: ['owner'] }, orla, { now })
    await expect(enrolTablet({ code }, { now })).rejects.toMatchObject(invalidCode)
    expect(await tablets()).toEqual([])
  })

  test('that never was makes nothing', async () => {
    await expect(enrolTablet({ code: '2222-2222' }, { now })).rejects.toMatchObject(invalidCode)
    expect(await tablets()).toEqual([])
  })

  test('is shown once: the same operation again does not bring it back', async () => {
    const op = { id: '0195f6a0-0000-4000-8000-000000000011', hash: 'c0ffee' }
    await makeTabletCode(shop.staff.orla, mill, { now, op })
    await expect(makeTabletCode(shop.staff.orla, mill, { now, op })).rejects.toMatchObject({
      refusal: { code: 'wrong-state' },
    })
    expect(await codes()).toHaveLength(1)
  })
})

describe('only the owner', () => {
  test.each(notOwners)('%s makes no code, sees no list, changes and revokes nothing', async (who) => {
    const { tabletId } = await enrolled(shop.staff.orla)
    const look = async () => ({ tablets: await tablets(), codes: await codes(), trail: await trail() })
    const change = { tabletId, version: 1, name: 'Mine', station: 'wash' as const }
    await expectRefused(shop.staff[who], (actor) => makeTabletCode(actor, mill, { now }), look)
    await expectRefused(shop.staff[who], (actor) => seeTablets(actor), look)
    await expectRefused(shop.staff[who], (actor) => seeTablet(actor, tabletId), look)
    await expectRefused(shop.staff[who], (actor) => changeTablet(actor, change, { now }), look)
    await expectRefused(shop.staff[who], (actor) => revokeTablet(actor, { tabletId }, { now }), look)
  })
})

test('the list says where each is, who enrolled it and when it was last seen; revoked ones stand last', async () => {
  const one = await enrolled(shop.staff.orla, 'A tablet')
  const two = await enrolled(shop.staff.orla, 'B tablet')
  await revokeTablet(shop.staff.orla, { tabletId: one.tabletId }, { now })
  await seeRack(two.token, after(30_000))
  expect((await seeTablets(shop.staff.orla)).rows.map(({ lastSeenAt }) => lastSeenAt)).toEqual([now, now])
  await seeRack(two.token, after(61_000))
  expect((await seeTablets(shop.staff.orla)).rows).toMatchObject([
    { name: 'B tablet', stationName: 'Deck mill', by: 'Orla Quennell', lastSeenAt: after(61_000), revoked: false },
    { name: 'A tablet', lastSeenAt: now, revoked: true },
  ])
})

test('another name and station; a change of what somebody else has changed is a conflict', async () => {
  const { tabletId, token } = await enrolled(shop.staff.orla)
  const input = changeTabletSchema.parse({ tabletId, version: 1, name: 'Tablet at the bench', station: 'flow-bench' })
  await changeTablet(shop.staff.orla, input, { now })
  expect(await seeRack(token, now)).toMatchObject({ tabletName: 'Tablet at the bench', station: 'flow-bench' })
  await expect(changeTablet(shop.staff.orla, input, { now })).rejects.toMatchObject({ refusal: { code: 'conflict' } })
  expect(changeTabletSchema.safeParse({ ...input, station: 'roof' }).success).toBe(false)
  const { changes } = (await trail()).at(-1)!
  expect(JSON.parse(changes)).toMatchObject({ value: { station: { from: 'deck-mill', to: 'flow-bench' } } })
})

describe('revoking', () => {
  test('ends every session on it at once, and no other', async () => {
    const { orla, dov, ines } = shop.staff
    const [one, two] = [await enrolled(orla), await enrolled(orla, 'The other')]
    const sessions = [await sessionAt(one, dov, pinOf('dov')), await sessionAt(one, ines, pinOf('ines'))]
    const elsewhere = await sessionAt(two, dov, pinOf('dov'))
    await revokeTablet(orla, { tabletId: one.tabletId }, { now })
    for (const session of sessions) expect(await whoIs(session, one.token)).toBeNull()
    expect(await whoIs(elsewhere, two.token)).not.toBeNull()
    const ended = await shop.database.client.session.findMany({ where: { tabletId: one.tabletId } })
    expect(ended.map(({ endReason }) => endReason)).toEqual(['tablet revoked', 'tablet revoked'])
  })

  test('leaves the device nothing: no rack, no PIN; again changes nothing', async () => {
    const { orla, dov } = shop.staff
    const { tabletId, token } = await enrolled(orla)
    await revokeTablet(orla, { tabletId }, { now })
    expect(await seeRack(token, now)).toBeNull()
    expect(await signInAt(token, dov, pinOf('dov'))).toEqual({ kind: 'no-tablet' })
    const before = await trail()
    await revokeTablet(orla, { tabletId }, { now: after(1000) })
    expect(await trail()).toEqual(before)
  })
})

test('the rack has the cards of those who work at the stations, by name', async () => {
  const { token } = await enrolled(shop.staff.orla)
  const cards = (await seeRack(token, now))?.cards ?? []
  // Tamsin is the counter's.
  expect(cards.map(({ name }) => name)).toEqual(['Bram Oldacre', 'Dov Marrick', 'Ines Kestrow', 'Orla Quennell'])
  expect(cards.every(({ hasPin, waitMs }) => hasPin && waitMs === 0)).toBe(true)
  const dov = { personId: shop.staff.dov.personId, version: 1, retired: true }
  await retirePerson(shop.staff.orla, dov, { now })
  expect((await seeRack(token, now))?.cards.map(({ name }) => name)).not.toContain('Dov Marrick')
  expect(await seeRack(null, now)).toBeNull()
  expect(await seeRack('a made-up token', now)).toBeNull()
})
