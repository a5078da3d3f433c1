import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { actorOf, endSession, openSession, touchSession } from '@/lib/data/sessions'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write } from '@/lib/data/write'
import { clearPin } from '@/lib/use-cases/people/clear-pin'
import { changePerson } from '@/lib/use-cases/people/change-person'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { seePeople } from '@/lib/use-cases/people/see-people'
import { seeAccount } from '@/lib/use-cases/people/see-account'
import { setOwnPin } from '@/lib/use-cases/people/set-own-pin'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { seePriceList } from '@/lib/use-cases/prices/see-price-list'
import { revokeTablet } from '@/lib/use-cases/tablets/revoke-tablet'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { demoPassword } from '@/lib/demo/people'
import { newPasswordByLink, now, staffedShop, type Staffed } from '../people/staff'
import { after, enrolled, pinOf, sessionAt, signInAt, whoIs, type Device } from './enrolled'

const minuteMs = 60_000

let shop: Staffed
let device: Device
let dov: Actor
beforeEach(async () => {
  shop = await staffedShop()
  device = await enrolled(shop.staff.orla)
  dov = shop.staff.dov
})

const row = (personId: string) => shop.database.client.person.findUniqueOrThrow({ where: { id: personId } })
const newPin = (pin: string) => ({ password: demoPassword, pin, again: pin })

describe('without the device', () => {
  test('a PIN opens nothing: no cookie, a made-up one, one as long as a book', async () => {
    for (const token of [null, '', 'x'.repeat(32), 'x'.repeat(100_000)]) {
      expect(await signInAt(token, dov, pinOf('dov'))).toEqual({ kind: 'no-tablet' })
    }
    expect(await shop.database.client.session.count()).toBe(0)
  })

  test('a session is nobody’s: no cookie, or that of another tablet', async () => {
    const other = await enrolled(shop.staff.orla, 'The other')
    const session = await sessionAt(device, dov, pinOf('dov'))
    expect(await whoIs(session, device.token)).toMatchObject({ name: 'Dov Marrick' })
    expect(await whoIs(session, null)).toBeNull()
    expect(await whoIs(session, other.token)).toBeNull()
  })

  test('a password’s session needs no device', async () => {
    const session = await openSession(shop.staff.orla.personId, now)
    expect(await whoIs(session, null)).toMatchObject({ roles: ['owner'] })
    expect(await whoIs(session, device.token)).toMatchObject({ roles: ['owner'] })
  })
})

describe('guessing a PIN', () => {
  const guess = (person: Actor, at: Date, token = device.token) => signInAt(token, person, '999998', at)

  test('ten times in a row: three are looked at, and then the right one has to wait too', async () => {
    const kinds = []
    for (let time = 0; time < 10; time += 1) kinds.push((await guess(dov, after(time))).kind)
    expect(kinds).toEqual([...Array(3).fill('wrong'), ...Array(7).fill('wait')])
    expect(await signInAt(device.token, dov, pinOf('dov'), after(14_000))).toMatchObject({ kind: 'wait' })
    expect(await signInAt(device.token, dov, pinOf('dov'), after(2 + 15_000))).toMatchObject({ kind: 'in' })
  })

  test('slows this person on this device, not another person and not another device', async () => {
    const other = await enrolled(shop.staff.orla, 'The other')
    for (let time = 0; time < 10; time += 1) await guess(dov, now)
    expect(await guess(dov, now)).toMatchObject({ kind: 'wait' })
    expect(await signInAt(device.token, shop.staff.ines, pinOf('ines'))).toMatchObject({ kind: 'in' })
    expect(await signInAt(other.token, dov, pinOf('dov'))).toMatchObject({ kind: 'in' })
    const waits = (await seeRack(device.token, now))?.cards.map(({ name, waitMs }) => [name, waitMs])
    expect(waits).toEqual([
      ['Bram Oldacre', 0],
      ['Dov Marrick', 15_000],
      ['Ines Kestrow', 0],
      ['Orla Quennell', 0],
    ])
  })

  test('the pause grows: 15 s, 30 s, 60 s', async () => {
    let at = 0
    for (const pauseMs of [0, 0, 0, 15_000, 30_000, 60_000]) {
      if (pauseMs > 0) expect(await guess(dov, after(at + pauseMs - 1))).toMatchObject({ kind: 'wait' })
      at += pauseMs
      expect(await guess(dov, after(at))).toMatchObject({ kind: 'wrong' })
    }
  })

  test('the right PIN begins the count again', async () => {
    for (const round of [1, 2]) {
      for (const time of [1, 2]) expect([round, time, (await guess(dov, now)).kind]).toEqual([round, time, 'wrong'])
      expect(await signInAt(device.token, dov, pinOf('dov'))).toMatchObject({ kind: 'in' })
    }
  })

  test('twelve at the same moment: no more than three are looked at', async () => {
    const answers = await Promise.all(Array.from({ length: 12 }, () => guess(dov, now)))
    expect(answers.filter(({ kind }) => kind === 'wrong').length).toBeLessThanOrEqual(3)
    expect(answers.filter(({ kind }) => kind === 'wait').length).toBeGreaterThanOrEqual(9)
  })

  test('somebody who is not there, has no PIN, or is retired is refused like a wrong PIN', async () => {
    const { tamsin, ines, orla } = shop.staff
    await clearPin(orla, { personId: ines.personId }, { now })
    await retirePerson(orla, { personId: dov.personId, version: 1, retired: true }, { now })
    const unknown = { ...dov, personId: '0190a0a0-0000-7000-8000-000000000000' }
    for (const [person, pin] of [
      [unknown, '480215'],
      [tamsin, '480215'],
      [ines, pinOf('ines')],
      [dov, pinOf('dov')],
    ] as const) {
      expect(await signInAt(device.token, person, pin)).toMatchObject({ kind: 'wrong' })
    }
  })

  test('the PIN of somebody who may not work at the stations any more opens nothing', async () => {
    const { orla, ines } = shop.staff
    const change = { personId: ines.personId, version: 1, name: ines.name, roles: ['counter' as const], grants: [] }
    await changePerson(orla, change, { now })
    expect(await signInAt(device.token, ines, pinOf('ines'))).toMatchObject({ kind: 'wrong' })
  })
})

describe('a PIN session', () => {
  test('is a machinist’s, also the owner’s and the deputy’s: no back room, no money, no people', async () => {
    const { orla, bram } = shop.staff
    for (const [person, pin] of [
      [orla, pinOf('orla')],
      [bram, pinOf('bram')],
    ] as const) {
      const there = await whoIs(await sessionAt(device, person, pin), device.token)
      expect(there).toEqual({ personId: person.personId, name: person.name, roles: ['machinist'], grants: [] })
      const refused = { refusal: { code: 'not-allowed' } }
      await expect(seeBackRoom(there!, now)).rejects.toMatchObject(refused)
      await expect(seePeople(there!)).rejects.toMatchObject(refused)
      await expect(seePriceList(there!)).rejects.toMatchObject(refused)
      await expect(clearPin(there!, { personId: dov.personId }, { now })).rejects.toMatchObject(refused)
      await expect(seeQueue(there!, 'deck-mill')).resolves.toMatchObject({ ready: [] })
    }
  })

  test('ends five minutes after the last touch; pages that ask by themselves do not keep it up', async () => {
    const session = await sessionAt(device, dov, pinOf('dov'))
    for (const minutes of [1, 2, 3, 4, 4.99]) {
      expect([minutes, await whoIs(session, device.token, after(minutes * minuteMs))]).not.toEqual([minutes, null])
    }
    expect(await whoIs(session, device.token, after(5 * minuteMs))).toBeNull()
  })

  test('goes on with each touch, to the end of a shift', async () => {
    const session = await sessionAt(device, dov, pinOf('dov'))
    for (let minutes = 4; minutes < 12 * 60; minutes += 4) {
      const at = after(minutes * minuteMs)
      expect([minutes, (await whoIs(session, device.token, at))?.name]).toEqual([minutes, 'Dov Marrick'])
      await touchSession(session, device.tabletId, at)
    }
    expect(await whoIs(session, device.token, after(12 * 60 * minuteMs))).toBeNull()
  })

  test('a touch never sets the clock of it back, and notes when the tablet was seen', async () => {
    const session = await sessionAt(device, dov, pinOf('dov'))
    await touchSession(session, device.tabletId, after(4 * minuteMs))
    await touchSession(session, device.tabletId, after(minuteMs))
    expect(await whoIs(session, device.token, after(8 * minuteMs))).not.toBeNull()
    const tablet = await shop.database.client.tablet.findUniqueOrThrow({ where: { id: device.tabletId } })
    expect(tablet.lastSeenAt).toEqual(after(4 * minuteMs))
  })

  test('lasts as long as the owner’s setting says', async () => {
    await write(shop.staff.orla, { now }, (ctx) =>
      addSettingsVersion(ctx, 0, 'a wet hand', (before) => ({ ...before, tabletIdleMinutes: 2 }), 'settings.change'),
    )
    const session = await sessionAt(device, dov, pinOf('dov'))
    expect(await whoIs(session, device.token, after(2 * minuteMs - 1))).not.toBeNull()
    expect(await whoIs(session, device.token, after(2 * minuteMs))).toBeNull()
  })

  const endings: Record<string, (personId: string, session: string) => Promise<unknown>> = {
    'a new password': async (personId) => newPasswordByLink(shop.staff.orla, personId, 'a plum deck and a square hole'),
    'other rights': async (personId) =>
      changePerson(
        shop.staff.orla,
        { personId, version: 1, name: 'Dov Marrick', roles: ['machinist', 'counter'], grants: [] },
        { now },
      ),
    retiring: async (personId) => retirePerson(shop.staff.orla, { personId, version: 1, retired: true }, { now }),
    'another PIN': async () => setOwnPin(dov, newPin('820461'), { now }),
    'the PIN cleared': async (personId) => clearPin(shop.staff.orla, { personId }, { now }),
    'signing out': async (_personId, session) => endSession(session, 'switched person', now),
  }
  test.each(Object.keys(endings))('ends with: %s', async (ending) => {
    const session = await sessionAt(device, dov, pinOf('dov'))
    const others = await sessionAt(device, shop.staff.ines, pinOf('ines'))
    await endings[ending]!(dov.personId, session)
    expect(await whoIs(session, device.token)).toBeNull()
    expect(await whoIs(others, device.token)).not.toBeNull()
  })
})

describe('a password on a tablet', () => {
  const minutes = (many: number) => after(many * minuteMs)
  const opened = () => openSession(shop.staff.orla.personId, now, { tabletId: device.tabletId, idleMs: 5 * minuteMs })

  test('gives all rights, there alone, and goes back to the rack like a PIN', async () => {
    const session = await opened()
    expect(await whoIs(session, device.token, minutes(4.99))).toMatchObject({ roles: ['owner'] })
    expect(await whoIs(session, null)).toBeNull()
    expect(await whoIs(session, device.token, minutes(5))).toBeNull()
  })

  test('ends when the tablet is lost and revoked', async () => {
    const session = await opened()
    await revokeTablet(shop.staff.orla, { tabletId: device.tabletId }, { now })
    expect(await whoIs(session, device.token)).toBeNull()
  })

  test('outlives another PIN', async () => {
    const session = await opened()
    await setOwnPin(shop.staff.orla, newPin('820461'), { now })
    expect(await whoIs(session, device.token)).not.toBeNull()
  })
})

describe('one’s own PIN', () => {
  test('takes one’s own password, and works at once; a password’s session goes on', async () => {
    const session = await openSession(dov.personId, now)
    await setOwnPin(dov, newPin('820461'), { now })
    expect(await signInAt(device.token, dov, pinOf('dov'))).toMatchObject({ kind: 'wrong' })
    expect(await signInAt(device.token, dov, '820461')).toMatchObject({ kind: 'in' })
    expect(await whoIs(session, null)).not.toBeNull()
    expect((await row(dov.personId)).pinHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
  })

  test('is refused with another’s password, or none of the counter’s', async () => {
    const before = await row(dov.personId)
    await expect(setOwnPin(dov, { ...newPin('820461'), password: 'not mine' }, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { password: expect.any(String) } },
    })
    await expect(setOwnPin(dov, newPin('123456'), { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { pin: expect.any(String) } },
    })
    expect(await row(dov.personId)).toEqual(before)
    await expect(setOwnPin(shop.staff.tamsin, newPin('820461'), { now })).rejects.toMatchObject({
      refusal: { code: 'not-allowed' },
    })
    expect(await seeAccount(shop.staff.tamsin)).toMatchObject({ hasPin: false, mayHavePin: false })
    expect(await seeAccount(dov)).toMatchObject({ hasPin: true, mayHavePin: true })
  })

  test('ends the pause after wrong ones; leaves no trace', async () => {
    process.env.NEXTAUTH_SECRET = 'a secret of at least thirty-two characters'
    for (let time = 0; time < 5; time += 1) await signInAt(device.token, dov, '999998')
    const op = { id: '0195f6a0-0000-4000-8000-000000000021', hash: 'c0ffee' }
    await setOwnPin(dov, newPin('820461'), { now, op })
    expect(await signInAt(device.token, dov, '820461')).toMatchObject({ kind: 'in' })
    const { client } = shop.database
    const kept = JSON.stringify([await client.auditEntry.findMany(), await client.operation.findMany()])
    for (const secret of ['820461', demoPassword, 'argon2', op.hash]) expect(kept).not.toContain(secret)
  })

  test('the owner clears it and cannot set it; clearing again changes nothing', async () => {
    await clearPin(shop.staff.orla, { personId: dov.personId }, { now })
    expect(await signInAt(device.token, dov, pinOf('dov'))).toMatchObject({ kind: 'wrong' })
    expect((await seeRack(device.token, now))?.cards.find(({ name }) => name === dov.name)?.hasPin).toBe(false)
    const entries = () => shop.database.client.auditEntry.count({ where: { action: 'person.clear-pin' } })
    expect(await entries()).toBe(1)
    await clearPin(shop.staff.orla, { personId: dov.personId }, { now })
    expect(await entries()).toBe(1)
    expect(actorOf(await row(dov.personId)).roles).toEqual(['machinist'])
  })
})
