import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { acceptablePin } from '@/lib/core/access/pin'
import { pinPauseMs, pinWaitMs } from '@/lib/core/access/pin-pause'
import { allowPin, atTablet, mayHavePin, pinSessionHolds } from '@/lib/core/access/pin-session'
import { can } from '@/lib/core/access/can'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { actions } from '@/lib/core/access/table'

const person = (roles: readonly Role[], grants: readonly Grant[] = []): Actor => ({
  personId: 'p',
  name: 'Ada Quill',
  roles,
  grants,
})

describe('a PIN', () => {
  // Neither in order nor of a short period: the last three only nearly.
  test.each(['480215', '112358', '000001', '135790', '901234', '012346', '121213'])('%s', (pin) => {
    expect(acceptablePin(pin)).toEqual({ ok: true, value: pin })
  })

  test.each([
    ['000000', 'repeat'],
    ['444444', 'repeat'],
    ['121212', 'repeat'],
    ['123123', 'repeat'],
    ['123456', 'in order'],
    ['012345', 'in order'],
    ['567890', 'in order'],
    ['654321', 'in order'],
    ['987654', 'in order'],
    ['098765', 'in order'],
    ['12345', 'six digits'],
    ['1234567', 'six digits'],
    ['', 'six digits'],
    ['48021٥', 'six digits'],
    ['48 215', 'six digits'],
    ['480215\n', 'six digits'],
  ])('%j is refused: %s', (pin, why) => {
    expect(acceptablePin(pin)).toMatchObject({ ok: false, refusal: { code: 'invalid' } })
    const answer = acceptablePin(pin)
    expect(answer.ok ? '' : answer.refusal.message).toContain(why)
  })

  // Of period 1, 2 or 3: 10³ + 10² − 10 (those of period 1 are of both others). In order: 6 + 6 of eleven digits each.
  test('1,102 of a million are refused', () => {
    let refused = 0
    for (let number = 0; number < 1_000_000; number += 1) {
      if (!acceptablePin(String(number).padStart(6, '0')).ok) refused += 1
    }
    expect(refused).toBe(10 ** 3 + 10 ** 2 - 10 + 6 + 6)
  })
})

describe('the pause after wrong PINs', () => {
  // Two are free; then 15 s, doubled each time: 15, 30, 60, 120, 240, 480, 960, 1920 s; then an hour.
  test.each([
    [0, 0],
    [1, 0],
    [2, 0],
    [3, 15],
    [4, 30],
    [5, 60],
    [10, 1920],
    [11, 3600],
    [12, 3600],
    [5000, 3600],
  ])('after %i: %i s', (wrong, seconds) => {
    expect(pinPauseMs(wrong)).toBe(seconds * 1000)
  })

  const at = new Date('2026-03-02T15:00:00Z')
  const later = (ms: number) => new Date(at.getTime() + ms)

  test('runs from the last wrong one to its end', () => {
    const tries = { wrong: 3, lastAt: at }
    expect(pinWaitMs(tries, at)).toBe(15_000)
    expect(pinWaitMs(tries, later(5000))).toBe(10_000)
    expect(pinWaitMs(tries, later(14_999))).toBe(1)
    expect(pinWaitMs(tries, later(15_000))).toBe(0)
    expect(pinWaitMs(null, at)).toBe(0)
  })

  test('is no longer when the clock was set back', () => {
    expect(pinWaitMs({ wrong: 3, lastAt: at }, later(-3_600_000))).toBe(15_000)
  })

  test('is a number from 0 to an hour, whatever is on record', () => {
    fc.assert(
      fc.property(fc.double(), fc.integer(), (wrong, ms) => {
        for (const waitMs of [pinPauseMs(wrong), pinWaitMs({ wrong, lastAt: at }, later(ms))]) {
          expect(waitMs).toBeGreaterThanOrEqual(0)
          expect(waitMs).toBeLessThanOrEqual(3_600_000)
        }
      }),
    )
  })

  // Guesses of one person on one device in a year, each after its pause: 10 within the first hour and a bit, then one an hour.
  test('leaves a guesser under 1 in 100 in a year', () => {
    const yearMs = 365 * 24 * 3_600_000
    let [guesses, ms] = [0, 0]
    while (ms <= yearMs) {
      guesses += 1
      ms += pinPauseMs(guesses)
    }
    expect(guesses).toBeGreaterThan(8000)
    expect(guesses / 998_898).toBeLessThan(0.01)
  })
})

describe('at a tablet', () => {
  const everybody = fc.record({
    roles: fc.subarray<Role>(['counter', 'machinist', 'owner']),
    grants: fc.subarray<Grant>(['release', 'waive']),
  })

  test('everybody has a machinist’s rights and no others, whatever they hold', () => {
    const machinist = person(['machinist'])
    fc.assert(
      fc.property(everybody, ({ roles, grants }) => {
        const there = atTablet(person(roles, grants))
        for (const action of actions) expect([action, can(there, action)]).toEqual([action, can(machinist, action)])
        expect(there).toMatchObject({ personId: 'p', name: 'Ada Quill' })
      }),
    )
  })

  test('nobody gets a right there that they do not hold', () => {
    fc.assert(
      fc.property(everybody, ({ roles, grants }) => {
        const own = person(roles, grants)
        if (!mayHavePin(own)) return
        for (const action of actions)
          if (can(atTablet(own), action)) expect([action, can(own, action)]).toEqual([action, true])
      }),
    )
  })

  test('the owner is in no back room there, and sees no money', () => {
    const owner = atTablet(person(['owner', 'counter', 'machinist'], ['release', 'waive']))
    for (const action of [
      'back-room.see',
      'person.change',
      'settings.change',
      'tablet.change',
      'price.see',
      'payment.take',
      'outside.cost',
      'visit.release',
      'visit.waive',
      'hold.decide',
      'plan.override',
    ] as const) {
      expect([action, can(owner, action)]).toEqual([action, false])
    }
    expect(can(owner, 'step.tick-bench')).toBe(true)
  })

  test('a PIN is for those who work at the stations', () => {
    expect(mayHavePin(person(['machinist']))).toBe(true)
    expect(mayHavePin(person(['owner']))).toBe(true)
    expect(mayHavePin(person(['counter', 'machinist']))).toBe(true)
    expect(mayHavePin(person(['counter'], ['release', 'waive']))).toBe(false)
    expect(allowPin(person(['counter']))).toMatchObject({ ok: false, refusal: { code: 'not-allowed' } })
    expect(allowPin(person(['machinist']))).toEqual({ ok: true, value: true })
  })
})

describe('a PIN session', () => {
  const lastSeenAt = new Date('2026-03-02T15:00:00Z')
  const session = { lastSeenAt, idleMs: 300_000, tokenHash: 'hash', revokedAt: null }
  const after = (ms: number) => new Date(lastSeenAt.getTime() + ms)

  test('goes on until it was left alone for as long as is allowed', () => {
    expect(pinSessionHolds(session, 'hash', after(299_999))).toBe(true)
    expect(pinSessionHolds(session, 'hash', after(300_000))).toBe(false)
  })

  test('is of its own tablet alone', () => {
    expect(pinSessionHolds(session, null, after(0))).toBe(false)
    expect(pinSessionHolds(session, 'another', after(0))).toBe(false)
  })

  test('ends with its tablet', () => {
    expect(pinSessionHolds({ ...session, revokedAt: after(0) }, 'hash', after(0))).toBe(false)
  })
})
