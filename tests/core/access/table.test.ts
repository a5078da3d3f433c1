import { describe, expect, test } from 'vitest'
import { allow, can, readAction, tickAction } from '@/lib/core/access/can'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { actions, type Action } from '@/lib/core/access/table'

const person = (roles: readonly Role[], more: Partial<Pick<Actor, 'grants'>> = {}): Actor => ({
  personId: 'somebody',
  name: 'Somebody',
  roles,
  grants: [],
  ...more,
})

/**
 * Written from what each person must and may never do, not from the table: c counter, m machinist, o owner. The counter
 * never changes a machinist's reading; a machinist never waives, releases, sees prices or edits settings; what ends a
 * hold is the owner's; Away and the cut bench are open to all staff.
 */
const expected: Record<Action, string> = {
  'job.see': 'cmo',
  'job.book': 'co',
  'job.change': 'co',
  'price.see': 'co',
  'price.change': 'co',
  'invoice.write': 'co',
  'bookkeeping.see': 'o',
  'visit.undo-hand-over': 'o',
  'visit.hand-over-unpaid': 'o',
  'payment.take': 'co',
  'call.log': 'co',
  'message.write': 'co',
  'head.tag': 'co',
  'customer.see': 'co',
  'customer.change': 'co',
  'customer.export': 'o',
  'customer.blank': 'o',
  'customer.unmerge': 'o',
  'customer-link.make': 'co',
  'finding.report': 'cmo',
  'finding.ask': 'co',
  'paper.print': 'cmo',
  'step.tick-bench': 'mo',
  'step.tick-desk': 'cmo',
  'reading.record-bench': 'mo',
  'reading.record-desk': 'cmo',
  'reading.correct': 'mo',
  'plan.make': 'cmo',
  'plan.accept': 'co',
  'hold.open': 'cmo',
  'plan.override': 'o',
  'hold.decide': 'o',
  'photo.add': 'cmo',
  'photo.withdraw': 'o',
  'wait.open': 'cmo',
  'wait.end': 'cmo',
  'outside.see': 'cmo',
  'outside.send': 'cmo',
  'outside.receive': 'cmo',
  'outside.cost': 'co',
  'supply.order': 'co',
  'supply.receive': 'cmo',
  'supply.cost': 'co',
  'visit.rack': 'cmo',
  'visit.release': 'o',
  'visit.waive': 'o',
  'visit.return-as-is': 'co',
  'visit.hand-over': 'co',
  'cut-bench.see': 'cmo',
  'estimate.keep': 'cmo',
  'casting.see': 'cmo',
  'casting.change': 'o',
  'vendor.change': 'o',
  'person.change': 'o',
  'settings.change': 'o',
  'tablet.change': 'o',
  'back-room.see': 'o',
  'backup.make': 'o',
  'export.take': 'o',
}

const letters: Record<Role, string> = { counter: 'c', machinist: 'm', owner: 'o' }
const everyRole = Object.keys(letters) as Role[]
const cases = actions.flatMap((action) => everyRole.map((role) => ({ action, role })))

describe('role × action', () => {
  test.each(cases)('$role: $action', ({ action, role }) => {
    expect(can(person([role]), action)).toBe(expected[action].includes(letters[role]))
  })

  test.each(actions)('%s is refused to somebody without a role', (action) => {
    expect(can(person([]), action)).toBe(false)
    expect(can(person([], { grants: ['release', 'waive'] }), action)).toBe(
      action === 'visit.release' || action === 'visit.waive',
    )
  })

  test.each(actions)('%s: rights of several roles add up', (action) => {
    const counterAndMachinist = can(person(['counter', 'machinist']), action)
    expect(counterAndMachinist).toBe(/[cm]/.test(expected[action]))
  })
})

describe('grants', () => {
  const granted: { grant: Grant; action: Action }[] = [
    { grant: 'release', action: 'visit.release' },
    { grant: 'waive', action: 'visit.waive' },
  ]
  test.each(granted)('a deputy with $grant may $action and nothing else more', ({ grant, action }) => {
    const without = person(['machinist'])
    const deputy = person(['machinist'], { grants: [grant] })
    expect(actions.filter((each) => can(deputy, each) && !can(without, each))).toEqual([action])
  })
})

test('a refusal says who is refused and whom to ask', () => {
  const answer = allow(person(['machinist']), 'visit.release')
  expect(answer).toEqual({
    ok: false,
    refusal: { code: 'not-allowed', message: 'Somebody does not have the right to do this. Ask the owner.' },
  })
})

test('front-desk steps and readings are everybody’s, all others the bench’s', () => {
  expect([tickAction('front-desk'), readAction('front-desk')]).toEqual(['step.tick-desk', 'reading.record-desk'])
  expect([tickAction('deck-mill'), readAction('flow-bench')]).toEqual(['step.tick-bench', 'reading.record-bench'])
})
