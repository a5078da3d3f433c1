import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { restored, workTakenAway } from '@/lib/core/route/work-taken-away'
import { noRules, type OwnStep } from '@/lib/core/route/rules'
import { changeStepSchema, restoreRulesSchema } from '@/lib/schemas/rules'
import { changeRulesSeen, restoreRules, type ChangeAnswer } from '@/lib/use-cases/rules/change-rules-seen'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

let shop: Staffed
beforeEach(async () => {
  shop = await staffedShop()
})
const look = () => shop.database.client.settings.findMany()
const crack = (version: number, cell: '●' | '○' | '–', reason = '', seen = '') =>
  changeStepSchema.parse({
    version,
    ref: 'crack',
    label: 'Crack check',
    station: 'wash',
    cells: [cell, cell, cell, cell],
    waitsFor: [],
    undoneBy: [],
    reason,
    seen,
  })
const change = (input: ReturnType<typeof crack>) => changeRulesSeen(shop.staff.orla, input, { now })
const shownOf = (answer: ChangeAnswer) => {
  if (answer.kind !== 'shown') throw new Error('made without being shown')
  return answer.shown
}

describe('a change of the steps', () => {
  test.each(notOwners)('is the owner’s: %s is refused', (who) =>
    expectRefused(shop.staff[who], (actor: Actor) => changeRulesSeen(actor, crack(0, '●'), { now }), look),
  )

  test('is shown first, on trial heads of each kind, and made when it was seen', async () => {
    const shown = shownOf(await change(crack(0, '●')))
    expect(await look()).toEqual([])
    expect(shown.lines).toEqual(['Crack check: always, was conditional'])
    expect(shown.takesAway).toEqual([])
    // A new head without a cut gets it now, as does each other kind; a used one had it before.
    expect(shown.trials.map(({ name }) => name)).toContain('A head with no cut')
    expect(shown.trials.find(({ name }) => name === 'A head with no cut')?.changes).toEqual([
      'Crack check is needed: every head',
    ])
    expect(await change(crack(0, '●', '', shown.seen))).toEqual({ kind: 'made', version: 1 })
    expect(await look()).toHaveLength(1)
  })

  test('another change than the one that was seen is shown anew', async () => {
    const { seen } = shownOf(await change(crack(0, '●')))
    expect((await change(crack(0, '○', 'no', seen))).kind).toBe('shown')
    expect(await look()).toEqual([])
  })

  test('that takes work away needs a reason', async () => {
    const shown = shownOf(await change(crack(0, '–')))
    expect(shown.takesAway).toEqual(['Crack check'])
    await expect(change(crack(0, '–', '', shown.seen))).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { reason: 'This takes work away. Enter the reason.' } },
    })
    expect(await look()).toEqual([])
    expect(await change(crack(0, '–', 'the vendor does it', shown.seen))).toMatchObject({ kind: 'made' })
  })

  test('stands in the history and can be undone, shown first as well', async () => {
    const first = shownOf(await change(crack(0, '–', 'trial')))
    await change(crack(0, '–', 'trial', first.seen))
    const back = (seen: string) =>
      restoreRules(shop.staff.orla, restoreRulesSchema.parse({ version: 1, to: 0, reason: '', seen }), { now })
    const shown = shownOf(await back(''))
    expect(shown.lines).toEqual(['Crack check: conditional, was never'])
    expect(await back(shown.seen)).toEqual({ kind: 'made', version: 2 })
    const { current, history } = await seeSettings(shop.staff.orla)
    expect(current.values.rules).toEqual(noRules)
    expect(history.map(({ version, changedSteps }) => [version, changedSteps])).toEqual([
      [2, true],
      [1, true],
    ])
  })
})

describe('what takes work away', () => {
  const own = (more: Partial<OwnStep> = {}): OwnStep => ({
    id: 'own-1',
    label: 'Polish',
    station: 'port-bench',
    cells: ['○', '○', '○', '○'],
    when: '',
    limitIn: null,
    after: 'open-chamber',
    waitsFor: ['port'],
    undoneBy: ['seat-work'],
    owes: ['cc'],
    machining: true,
    retired: false,
    ...more,
  })
  const rules = (step: OwnStep) => ({ ...noRules, own: [step] })
  test.each<[string, Partial<OwnStep>, boolean]>([
    ['nothing', {}, false],
    ['more cells', { cells: ['●', '○', '○', '○'] }, false],
    ['more readings', { owes: ['cc', 'runout'] }, false],
    ['fewer cells', { cells: ['–', '○', '○', '○'] }, true],
    ['fewer readings', { owes: [] }, true],
    ['less to wait for', { waitsFor: [] }, true],
    ['less that undoes it', { undoneBy: [] }, true],
    ['no chips any more', { machining: false }, true],
    ['no longer used', { retired: true }, true],
    ['another name', { label: 'Polish it' }, false],
  ])('%s', (_, more, isLess) => {
    expect(workTakenAway(rules(own()), rules(own(more))).length > 0).toBe(isLess)
  })
  test('a larger limit, or another condition', () => {
    const at = (limitIn: number, when: OwnStep['when'] = 'cut-deeper') =>
      rules(own({ cells: ['◐', '○', '○', '○'], when, limitIn }))
    expect(workTakenAway(at(0.02), at(0.03))).toEqual(['Polish'])
    expect(workTakenAway(at(0.02), at(0.01))).toEqual([])
    expect(workTakenAway(at(0.02), at(0.02, 'gone-more'))).toEqual(['Polish'])
  })
  test('going back keeps the steps added since, no longer used', () => {
    const back = restored(noRules, rules(own()))
    expect(back.own).toEqual([own({ retired: true })])
    expect(restored(rules(own({ label: 'Old' })), rules(own())).own).toEqual([own({ label: 'Old' })])
  })
})
