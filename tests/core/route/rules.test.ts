import { describe, expect, test } from 'vitest'
import { computeRoute } from '@/lib/core/route/compute-route'
import { noRules, nextOwnId, type OwnStep, type RouteRules } from '@/lib/core/route/rules'
import { checkRules } from '@/lib/core/route/rules-check'
import { defaultRouteSettings } from '@/lib/core/route/settings'
import type { RouteFacts } from '@/lib/core/route/types'
import { walkThrough, walks } from '@/lib/core/route/walk'
import { flat, plain } from './visit'
import { rulesFaultText } from '@/lib/words/rules-faults'
import { waitText, whyText } from '@/lib/words/route'

const own = (more: Partial<OwnStep> = {}): OwnStep => ({
  id: 'own-1',
  label: 'Polish the chambers',
  station: 'port-bench',
  cells: ['○', '○', '○', '○'],
  when: '',
  limitIn: null,
  after: 'open-chamber',
  waitsFor: [],
  undoneBy: [],
  owes: [],
  machining: false,
  retired: false,
  ...more,
})
const visit = (more: Partial<RouteFacts>): RouteFacts => ({ ...plain, ...more })
const rules = (more: Partial<RouteRules>): RouteRules => ({ ...noRules, ...more })
const refusal = (more: Partial<RouteRules>): string => {
  const checked = checkRules(rules(more))
  return checked ? rulesFaultText(checked) : ''
}

test('the tables as they stand pass their own check, and every trial head comes to its end', () => {
  expect(checkRules(noRules)).toBeNull()
  expect(walks(noRules)).toHaveLength(10)
  for (const { facts } of walks(noRules)) {
    const { goesRound, ticks } = walkThrough(facts)
    expect(goesRound).toEqual([])
    // At least check in, final inspection and hand over; a walk that does nothing would prove nothing.
    expect(ticks).toBeGreaterThan(2)
  }
})

describe('refused, in words', () => {
  test.each<[string, Partial<RouteRules>, RegExp]>([
    ['a station without a name', { stationNames: { wash: ' ' } }, /every station a name/],
    ['two stations of one name', { stationNames: { wash: 'deck mill' } }, /Two stations.*deck mill/i],
    ['two steps of one name', { changed: { deburr: { label: 'Wrap' } }, own: [own({ label: 'wrap' })] }, /Two steps/],
    ['a name without an end', { changed: { deburr: { label: 'x'.repeat(61) } } }, /too long/],
    [
      'a final inspection that is left out',
      { changed: { final: { cells: ['–', '–', '–', '–'] } } },
      /the shop cannot change/,
    ],
    [
      'a condition where there is none',
      { changed: { deburr: { cells: ['◐', '●', '●', '●'] } } },
      /cannot be conditional/,
    ],
    ['an own step on no condition', { own: [own({ cells: ['◐', '○', '○', '○'] })] }, /choose a condition/],
    ['a condition in no column', { own: [own({ when: 'used-head' })] }, /at least one column/],
    [
      'a limit that is not given',
      { own: [own({ cells: ['–', '◐', '◐', '◐'], when: 'cut-deeper' })] },
      /enter the limit/,
    ],
    ['a step after the last', { own: [own({ after: 'hand-over' })] }, /before the final inspection/],
    ['a step that waits for the last', { own: [own({ waitsFor: ['final'] })] }, /the last steps/],
    ['a step that waits for itself', { own: [own({ waitsFor: ['own-1'] })] }, /wait for itself/],
    ['a step that is not there', { own: [own({ waitsFor: ['own-7'] })] }, /does not exist/],
    ['the same step twice', { own: [own(), own({ label: 'Another' })] }, /twice/],
    [
      'two steps that wait for each other',
      { changed: { deburr: { waitsFor: ['own-1'] } }, own: [own({ waitsFor: ['deburr'] })] },
      /wait for each other: .*(deburr|polish).* and .*(deburr|polish)/,
    ],
    [
      'two steps that undo each other for ever',
      {
        changed: { 'seat-work': { undoneBy: ['shop-step'] } },
        own: [own({ machining: true, undoneBy: ['seat-work'] })],
      },
      /never be finished: .*repeat endlessly/,
    ],
  ])('%s', (_, more, words) => expect(refusal(more)).toMatch(words))
})

describe('a step that the shop added', () => {
  const under = (step: OwnStep) => ({ settings: { ...defaultRouteSettings, rules: rules({ own: [step] }) } })
  const onRoute = (facts: ReturnType<typeof visit>) => computeRoute(facts).find(({ stepId }) => stepId === 'own-1')

  test('is on the route when it is ordered, right after the step it was put after, with its station and readings', () => {
    const facts = visit({ ordered: ['open-chamber', 'own-1'], ...under(own({ owes: ['work-note', 'cc'] })) })
    const route = computeRoute(facts)
    const places = route.map(({ stepId }) => stepId)
    expect(places.indexOf('own-1')).toBe(places.indexOf('open-chamber') + 1)
    expect(onRoute(facts)).toMatchObject({
      label: 'Polish the chambers',
      station: 'port-bench',
      why: { code: 'ordered' },
    })
    expect(onRoute(facts)?.owes.map(({ kind, missing }) => [kind, missing.length])).toEqual([
      ['work-note', 1],
      ['cc', 4],
    ])
  })

  test('comes on its condition, past its own figure only', () => {
    const step = own({ cells: ['–', '–', '◐', '◐'], when: 'cut-deeper', limitIn: 0.03 })
    const cut = (flatIn: number) => visit({ ...under(step), plan: flat(flatIn) })
    expect(onRoute(cut(0.03))).toBeUndefined()
    expect(whyText(onRoute(cut(0.031))?.why ?? null)).toBe('more is cut on this visit than 0.030 in')
  })

  test('that makes chips is washed off, and undoes the wash that went before it', () => {
    const facts = visit({ ordered: ['own-1'], ...under(own({ machining: true })) })
    const wash = (of: typeof facts) => computeRoute(of).find(({ stepId }) => stepId === 'wash-out')
    expect(wash(visit({ ordered: ['own-1'], ...under(own()) }))).toBeUndefined()
    expect(wash(facts)?.waitsFor.map(waitText)).toContain('Polish the chambers')
    const step = { occurrence: '', orderId: null } as const
    const events = (['check-in', 'wash-out', 'own-1'] as const).map((stepId, place) => ({
      seq: place + 1,
      kind: 'tick' as const,
      step: { stepId, ...step },
    }))
    expect(wash({ ...facts, events })).toMatchObject({ state: 'do again' })
  })

  test('once retired is on no new route, but stays where it was done', () => {
    const retired = under(own({ retired: true, cells: ['●', '●', '●', '●'] }))
    expect(onRoute(visit(retired))).toBeUndefined()
    const step = { stepId: 'own-1', occurrence: '', orderId: null } as const
    expect(onRoute(visit({ ...retired, events: [{ seq: 1, kind: 'tick', step }] }))?.state).toBe('done')
  })

  test('gets an id that was never given', () => {
    expect(nextOwnId(noRules)).toBe('own-1')
    expect(nextOwnId(rules({ own: [own({ id: 'own-3' }), own()] }))).toBe('own-4')
  })
})

test('a step renamed and moved keeps its state and says so under its new name', () => {
  const changed = rules({ changed: { crack: { label: 'Dye and lamp', station: 'measuring-bench' } } })
  const facts = visit({ used: true, settings: { ...defaultRouteSettings, rules: changed } })
  const crack = computeRoute(facts).find(({ stepId }) => stepId === 'crack')
  expect(crack).toMatchObject({ label: 'Dye and lamp', station: 'measuring-bench', why: { code: 'used-head' } })
})

test('an order that the shop added holds a step back beside what physics demands', () => {
  const changed = rules({ changed: { port: { waitsFor: ['pressure'] } } })
  const facts = visit({
    ordered: ['port', 'pressure', 'flow-before'],
    settings: { ...defaultRouteSettings, rules: changed },
  })
  const port = computeRoute(facts).find(({ stepId }) => stepId === 'port')
  expect(port?.waitsFor.map(waitText)).toEqual(
    expect.arrayContaining(['Pressure check', 'Flow run before', 'Check in']),
  )
})
