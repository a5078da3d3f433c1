import { describe, expect, it } from 'vitest'
import { canTick } from '@/lib/core/route/can-tick'
import { fixesOf } from '@/lib/core/route/fixes'
import { keyOf } from '@/lib/core/route/keys'
import { nothingYet } from '@/lib/core/route/nothing-yet'
import { secondCheckNeeded } from '@/lib/core/route/second-check'
import { defaultRouteSettings } from '@/lib/core/route/settings'
import type { RouteFacts, VisitEvent } from '@/lib/core/route/types'
import { secondCheckText } from '@/lib/words/second-check'

const mill = keyOf('flat-cut')
const plan: NonNullable<RouteFacts['plan']> = {
  kind: 'flat',
  flatIn: 0.025,
  angleIn: 0,
  angleDeg: 0,
  deepestIn: 0.025,
  totalRemovedIn: 0.025,
  intakeSideIn: null,
  ptvLossIn: null,
}
const facts = (deeperThanIn: number, over: Partial<RouteFacts> = {}): RouteFacts => ({
  ...nothingYet,
  source: 'customer',
  used: false,
  cameAssembled: false,
  overheated: false,
  ordered: ['flat-cut'],
  chambers: 4,
  plan,
  previousPlan: null,
  targetCc: 60,
  classMinCc: null,
  hasEngineData: false,
  camInHead: null,
  manifoldSpansHeads: null,
  remainingPtvIn: null,
  finishAsked: false,
  settings: { ...defaultRouteSettings, secondCheckDeeperThanIn: deeperThanIn },
  ...over,
})
const event = (seq: number, kind: VisitEvent['kind'], step: VisitEvent['step'] = null): VisitEvent => ({
  seq,
  kind,
  step,
})
const depth = (step = mill) => ({
  id: 'd',
  seq: 9,
  kind: 'cut-depth' as const,
  point: '',
  value: 0.01,
  text: '0.010',
  notTaken: null,
  step,
})

describe('the second check', () => {
  it('is off at first, and asked for over the depth that the shop sets, not at it', () => {
    expect(secondCheckNeeded(facts(defaultRouteSettings.secondCheckDeeperThanIn), mill)).toBeNull()
    expect(secondCheckNeeded(facts(0.02), mill)).toEqual({ depthIn: 0.025, deeperThanIn: 0.02, readsChamber: true })
    expect(secondCheckNeeded(facts(0.025), mill)).toBeNull()
    expect(secondCheckNeeded(facts(Number.NaN), mill)).toBeNull()
  })
  it('is for the cuts made here: each by its own part of the plan', () => {
    const both = { ...plan, kind: 'angle-flat' as const, flatIn: 0.015, angleIn: 0.06 }
    expect(secondCheckNeeded(facts(0.02, { plan: both }), mill)).toBeNull()
    expect(secondCheckNeeded(facts(0.02, { plan: both }), keyOf('angle-cut'))).toEqual({
      depthIn: 0.06,
      deeperThanIn: 0.02,
      readsChamber: true,
    })
    expect(secondCheckNeeded(facts(0.02), keyOf('finished'))).toBeNull()
    expect(secondCheckNeeded(facts(0.02, { plan: null }), mill)).toBeNull()
  })
  it('of a flat deck reads no chamber', () => {
    const flatDeck = {} as NonNullable<RouteFacts['flatDeck']>
    expect(secondCheckNeeded(facts(0.02, { flatDeck }), mill)).toMatchObject({ readsChamber: false })
  })
  it('stands until a new plan, and is not asked for once a pass was made', () => {
    const checked = [event(1, 'plan'), event(2, 'second-check', mill)]
    expect(secondCheckNeeded(facts(0.02, { events: checked }), mill)).toBeNull()
    expect(secondCheckNeeded(facts(0.02, { events: [...checked, event(3, 'plan')] }), mill)).not.toBeNull()
    // One of another step says nothing of this one.
    const other = [event(1, 'plan'), event(2, 'second-check', keyOf('angle-cut'))]
    expect(secondCheckNeeded(facts(0.02, { events: other }), mill)).not.toBeNull()
    expect(secondCheckNeeded(facts(0.02, { readings: [depth()] }), mill)).toBeNull()
    expect(secondCheckNeeded(facts(0.02, { readings: [depth(keyOf('angle-cut'))] }), mill)).not.toBeNull()
  })
  it('stands in the way of the tick, and is said with who may do it', () => {
    const may = canTick(facts(0.02), mill)
    expect(may).toEqual({
      ok: false,
      refused: { code: 'second-check', depthIn: 0.025, deeperThanIn: 0.02, readsChamber: true },
    })
    expect(fixesOf(facts(0.02), mill).map(({ what }) => what)).toEqual([{ code: 'second-check' }])
    expect(secondCheckText({ depthIn: 0.025, deeperThanIn: 0.02, readsChamber: true })).toBe(
      'Second check first: this cut is 25 thou, deeper than 20 thou. Another person reads one chamber and confirms plan and head. Any other person with the machinist’s right may do it, not the one who takes the head.',
    )
    expect(secondCheckText({ depthIn: 0.025, deeperThanIn: 0.02, readsChamber: false })).toContain(
      'Another person confirms plan and head.',
    )
    const off = canTick(facts(0), mill)
    expect(off.ok || off.refused.code).not.toBe('second-check')
  })
})
