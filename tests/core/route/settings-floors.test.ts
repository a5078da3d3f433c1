import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Cell, Cells } from '@/lib/core/route/cells'
import { causes } from '@/lib/core/route/do-again'
import { floorOf, isLess, raised } from '@/lib/core/route/floors'
import type { StepRef } from '@/lib/core/route/keys'
import { ownConditionIds } from '@/lib/core/route/own-conditions'
import { noRules, type OwnStep, type RouteRules, type StepChange } from '@/lib/core/route/rules'
import { checkRules, fixedCells } from '@/lib/core/route/rules-check'
import { stepTable } from '@/lib/core/route/steps'
import type { CutKind } from '@/lib/core/route/step-ids'
import { tableOf } from '@/lib/core/route/table'
import { walkThrough, walks } from '@/lib/core/route/walk'
import { parseSetting, settingFields, settingText } from '@/lib/core/shop/setting-fields'
import { defaultShopSettings, type ShopLimits } from '@/lib/core/shop/settings'
import { rulesFaultText } from '@/lib/words/rules-faults'
import { inLongRun } from '../../setup/long-run'

/**
 * What no head may leave without, by kind of cut, written out here and not taken from the tables. The trial heads have a
 * target, and lose 40 to 100 thou: past every limit that a shop may set.
 */
const always: readonly StepRef[] = ['check-in', 'final']
const ofAnyCut: readonly StepRef[] = [
  ...always,
  'thickness',
  'chambers',
  'deburr',
  'finished',
  'wash-out',
  'seat-after',
]
const demanded: Readonly<Record<CutKind, readonly StepRef[]>> = {
  none: always,
  'clean-up': [...ofAnyCut, 'flat-cut'],
  flat: [...ofAnyCut, 'flat-cut', 'seat-before'],
  angle: [...ofAnyCut, 'angle-cut', 'seat-before', 'bolt-seats', 'bolt-fit', 'bolt-reach', 'dowel-fit', 'ptv'],
  'angle-flat': [
    ...ofAnyCut,
    ...(['angle-cut', 'flat-cut', 'seat-before', 'bolt-seats', 'bolt-fit', 'bolt-reach', 'dowel-fit', 'ptv'] as const),
  ],
}
/** Each of these after the last of those. */
const physics: readonly (readonly [later: StepRef, earlier: readonly StepRef[]])[] = [
  ['flat-cut', ['angle-cut', 'thickness', 'chambers', 'seat-before']],
  ['seat-after', ['angle-cut', 'flat-cut']],
  ['finished', ['angle-cut', 'flat-cut', 'seat-work']],
  ['bolt-fit', ['angle-cut']],
  ['wash-out', ['flat-cut', 'deburr', 'bolt-fit', 'seat-work', 'rinse']],
  ['final', ['finished', 'wash-out', 'seat-after']],
]

const chips: readonly StepRef[] = [
  'guides',
  'port',
  'open-chamber',
  'angle-cut',
  'flat-cut',
  'deburr',
  'seat-work',
  'blend',
]
const measured: readonly StepRef[] = ['chambers', 'seat-before', 'flow-after', 'seat-after', 'finished']

const cell = fc.constantFrom<Cell>('●', '○', '◐', '–')
const cells: fc.Arbitrary<Cells> = fc.tuple(cell, cell, cell, cell)
const refs = stepTable.map(({ ref }) => ref)
/** Nothing can be set to wait for the last two: `checkRules` refuses it, as is held below. */
const few = fc.subarray(
  refs.filter((ref) => ref !== 'final' && ref !== 'hand-over'),
  { maxLength: 2 },
)
const fewCauses = fc.subarray([...causes], { maxLength: 2 })
const change: fc.Arbitrary<StepChange> = fc.record(
  { cells, waitsFor: few, undoneBy: fewCauses },
  { requiredKeys: ['cells'] },
)
const own = (at: number): fc.Arbitrary<OwnStep> =>
  fc.record({
    id: fc.constant<OwnStep['id']>(`own-${at}`),
    label: fc.constant(`Shop’s ${at}`),
    station: fc.constantFrom('wash', 'port-bench', 'outside'),
    cells,
    when: fc.constantFrom('', ...ownConditionIds),
    limitIn: fc.constantFrom(null, 0.02),
    after: fc.constantFrom(...refs.filter((ref) => ref !== 'final' && ref !== 'hand-over')),
    waitsFor: few,
    undoneBy: fewCauses,
    owes: fc.subarray(['cc', 'work-note', 'runout'] as const),
    machining: fc.boolean(),
    retired: fc.boolean(),
  })
const anyRules: fc.Arbitrary<RouteRules> = fc.record({
  stationNames: fc.constant({}),
  // The cells of some steps are not there to be set at all.
  changed: fc.dictionary(fc.constantFrom(...refs.filter((ref) => !fixedCells.includes(ref))), change, { maxKeys: 47 }),
  own: fc.oneof(fc.constant([]), fc.tuple(own(1)), fc.tuple(own(1), own(2))),
})

/** A figure that the page of limits takes, out of all that can be typed there. */
const anyLimits: fc.Arbitrary<ShopLimits> = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), {
    minLength: settingFields.length,
    maxLength: settingFields.length,
  })
  .map((dice) =>
    Object.fromEntries(
      settingFields.map((field, at) => {
        const typed = 'quantity' in field.kind ? String(Number(((dice[at] ?? 0) * 0.5).toFixed(4))) : ''
        const parsed = parseSetting(field, typed)
        return [field.key, parsed.ok ? parsed.value : defaultShopSettings[field.key]]
      }),
    ),
  ) as unknown as fc.Arbitrary<ShopLimits>

describe('whatever the owner sets', () => {
  it(
    'no trial head comes to its release without what physics demands, nor in another order',
    { timeout: 300_000 },
    () => {
      let released = 0
      let walked = 0
      fc.assert(
        fc.property(anyRules, anyLimits, fc.nat(9), (rules, limits, which) => {
          for (const { facts, name } of walks(rules).slice(which, which + 1)) {
            walked += 1
            const kind = facts.plan?.kind ?? 'none'
            const { order, goesRound } = walkThrough({ ...facts, settings: { ...facts.settings, ...limits, rules } })
            // Steps that a shop makes wait for each other never come to an end; then nothing is released.
            if (goesRound.length > 0) continue
            released += 1
            for (const ref of demanded[kind]) expect(order, `${name} without ${ref}`).toContain(ref)
            let isDirty = false
            for (const ref of order) {
              isDirty = ref === 'rinse' || ref === 'wash-out' ? false : isDirty || chips.includes(ref)
              expect(isDirty && measured.includes(ref), `${name}: ${ref} with chips in it`).toBe(false)
            }
            for (const [later, earlier] of physics) {
              const at = order.lastIndexOf(later)
              if (at < 0) continue
              for (const ref of earlier) {
                expect(order.lastIndexOf(ref), `${name}: ${ref} after ${later}`).toBeLessThan(at)
              }
            }
          }
        }),
        { numRuns: inLongRun ? 2000 : 100 },
      )
      // It must be worth something: a good part of the heads came to their end.
      expect(released).toBeGreaterThan(walked / 10)
    },
  )

  it('a step that would wait for the last two is refused when it is set', () => {
    for (const ref of ['final', 'hand-over'] as const) {
      expect(checkRules({ ...noRules, changed: { deburr: { waitsFor: [ref] } } })).toEqual({
        code: 'waits-for-the-last',
        label: 'Deburr and chamfer',
      })
    }
  })

  it('a cell under its floor is refused when it is set, with the floor in words', () => {
    const refused = (ref: StepRef, to: Cells) => {
      const checked = checkRules({ ...noRules, changed: { [ref]: { cells: to } } })
      return checked === null ? '' : rulesFaultText(checked)
    }
    expect(refused('bolt-fit', ['–', '–', '–', '–'])).toMatch(/for angle cut .*“always”/)
    expect(refused('bolt-fit', ['–', '–', '–', '○'])).toMatch(/for angle cut .*“always”/)
    expect(refused('thickness', ['–', '●', '○', '●'])).toMatch(/for flat cut .*“always”/)
    expect(refused('deburr', ['–', '○', '●', '●'])).toMatch(/for clean-up .*“always”/)
    expect(refused('seat-after', ['–', '○', '●', '●'])).toMatch(/for clean-up .*“conditional”/)
    expect(refused('heights', ['○', '◐', '◐', '◐'])).toMatch(/for no cut .*“conditional”/)
    expect(refused('wash-out', ['◐', '●', '●', '○'])).toMatch(/for angle cut/)
    // What has no floor is the shop's own to leave out.
    expect(refused('wrap', ['–', '–', '–', '–'])).toBe('')
    expect(refused('crack', ['–', '–', '–', '–'])).toBe('')
    // More often than the floor is always allowed.
    expect(refused('bolt-fit', ['●', '●', '●', '●'])).toBe('')
  })

  it('a version kept from earlier, under the floor, is read as at the floor', () => {
    const rules: RouteRules = { ...noRules, changed: { 'bolt-fit': { cells: ['–', '–', '–', '–'] } } }
    expect(tableOf(rules).rowOf('bolt-fit').cells).toEqual(['–', '–', '–', '●'])
    expect(raised('ptv', ['●', '–', '–', '○'])).toEqual(['●', '◐', '◐', '●'])
  })

  it('every floor is one that the tables of every shop keep, and can be set', () => {
    for (const { ref, cells: stock, when } of stepTable) {
      const least = floorOf(ref)
      least.forEach((each, place) => {
        expect(isLess(stock[place] ?? '–', each), `${ref}, column ${place}`).toBe(false)
        // Arrival steps come with an order, on no condition of the table.
        if (each === '◐' && !ref.startsWith('arrival-')) expect(when, ref).toBeDefined()
      })
    }
  })

  it('a limit that would switch a check off is refused, and its end is taken', () => {
    const parse = (key: string, text: string) => {
      const field = settingFields.find((each) => each.key === key)
      return field ? parseSetting(field, text).ok : null
    }
    expect([parse('boltReachLimitIn', '0.06'), parse('boltReachLimitIn', '0.0601')]).toEqual([true, false])
    expect([parse('dowelLimitIn', '60 thou'), parse('dowelLimitIn', '61 thou')]).toEqual([true, false])
    expect([parse('cleanUpSeatLimitIn', '.030'), parse('cleanUpSeatLimitIn', '.031')]).toEqual([true, false])
    expect([parse('sealingMarginIn', '0.001'), parse('sealingMarginIn', '0')]).toEqual([true, false])
    expect([parse('ptvRemainingLimitIn', '0.04'), parse('ptvRemainingLimitIn', '0.039')]).toEqual([true, false])
    for (const field of settingFields) {
      const value = defaultShopSettings[field.key]
      expect(parseSetting(field, settingText(field, value)), field.key).toEqual({ ok: true, value })
    }
  })
})
