import { describe, expect, it } from 'vitest'
import { canTick } from '@/lib/core/route/can-tick'
import { completeness } from '@/lib/core/route/completeness'
import { computeRoute } from '@/lib/core/route/compute-route'
import { fixesOf, type Fix } from '@/lib/core/route/fixes'
import { inTheWayText } from '@/lib/words/ticks'
import { keyOf, type StepRef } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import { angleFlat, arrival, flat, order, Visit } from './visit'

const here = (facts: Parameters<typeof Visit.of>[0] = {}) => Visit.of({ targetCc: 60, ...facts }).ticked('check-in')

/** The ways out of a refusal; there must be a refusal. */
function fixes(visit: Visit, at: StepRef | StepKey): readonly Fix[] {
  const key = typeof at === 'string' ? keyOf(at) : at
  expect(canTick(visit.facts, key).ok).toBe(false)
  return fixesOf(visit.facts, key)
}
const told = (found: readonly Fix[]) => found.map(({ what, place }) => [inTheWayText(what), place.kind])

describe('what stands in the way of a tick has a place where it is put right', () => {
  it('readings that are owed: the step itself', () => {
    const visit = here({ plan: flat(0.018) }).read('chambers', ['cc', '1', 63], ['cc', '2', 63])
    const [first] = fixes(visit, 'chambers')
    expect(told(fixes(visit, 'chambers'))[0]).toEqual(['Chamber 3 and chamber 4 have no cc yet', 'step'])
    expect(first).toEqual({
      what: { code: 'readings', kind: 'cc', points: ['3', '4'] },
      place: { kind: 'step', step: keyOf('chambers'), station: 'measuring-bench' },
    })
  })

  it('a step that comes first: that step, at its station', () => {
    const found = fixes(here({ plan: flat(0.018) }), 'finished')
    const cut = found.find(({ what }) => what.code === 'first' && what.label === 'Flat cut')
    expect(cut && inTheWayText(cut.what)).toBe('Flat cut comes first')
    expect(cut?.place).toEqual({ kind: 'step', step: keyOf('flat-cut'), station: 'deck-mill' })
  })

  it('a hold: the head’s page, with the reason', () => {
    const visit = here({ plan: flat(0.018), openHolds: [{ reason: 'crack by chamber 2' }] })
    expect(told(fixes(visit, 'chambers'))).toEqual([['On hold: crack by chamber 2', 'head']])
  })

  it('a missing plan: the plan', () => {
    const visit = here({ ordered: ['flat-cut'] })
    expect(told(fixes(visit, 'flat-cut'))).toContainEqual(['Make the cut plan', 'plan'])
  })

  it('a head that is away, or an order that has not come back: that order', () => {
    const out = order('7', ['angle-cut'], { sentSeq: 1 })
    const away = here({ plan: angleFlat(0.063, 0.01), orders: [out] })
    expect(fixes(away, 'chambers')).toEqual([
      {
        what: { code: 'order', order: { vendor: 'Northgate Grinding', number: '26-7' } },
        place: { kind: 'order', orderId: '7' },
      },
    ])
    expect(told(fixes(away, arrival('arrival-count', '7')))).toEqual([['Northgate Grinding, order 26-7', 'order']])
  })

  it('of two arrivals with one label: the one that is open, or both', () => {
    const orders = [
      order('7', ['angle-cut'], { sentSeq: 1, receivedSeq: 2 }),
      order('8', ['angle-cut'], { sentSeq: 3, receivedSeq: 4 }),
    ]
    const visit = here({ plan: angleFlat(0.063, 0.01), orders })
    const arrivals = (found: readonly Fix[]) =>
      found.flatMap(({ place }) =>
        place.kind === 'step' && place.step.stepId === 'arrival-figures' ? [place.step.orderId] : [],
      )
    expect(arrivals(fixes(visit, 'flat-cut'))).toEqual(['7', '8'])
    expect(
      arrivals(
        fixes(
          visit.does(arrival('arrival-count', '7')).does('rinse').does(arrival('arrival-figures', '7')),
          'flat-cut',
        ),
      ),
    ).toEqual(['8'])
  })

  it('parts that have not come, a head on order: what is bought', () => {
    const waits = [{ step: keyOf('chambers'), what: 'eight valves', open: true }]
    const visit = here({ plan: flat(0.018), partsWaits: waits })
    expect(told(fixes(visit, 'chambers'))).toContainEqual(['Eight valves', 'parts'])
    expect(told(fixes(here({ source: 'bought', onOrder: true }), 'final'))).toEqual([['See what is on order', 'parts']])
  })

  it('an answer that says stop: the step where it was given', () => {
    const visit = here({ used: true }).read('crack', ['crack', '', 'crack'])
    const found = fixes(visit, 'crack')
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({
      what: { code: 'stop', kind: 'crack', answer: 'crack' },
      place: { kind: 'step', step: keyOf('crack') },
    })
    expect(told(found)).toEqual([['Crack check: crack found', 'step']])
  })

  it('a head that is not released: the head’s page; a step that is not on the route: there as well', () => {
    expect(told(fixes(here(), 'hand-over'))).toContainEqual(['Release this head', 'head'])
    expect(told(fixes(here(), arrival('arrival-count', 'none')))).toEqual([['See the route of this head', 'head']])
  })

  it('every step that may not be ticked yet has at least one, and one that may has none', () => {
    const visit = here({ plan: flat(0.018), used: true, ordered: ['seat-work', 'flow-after'] })
    const open = computeRoute(visit.facts).filter(({ state }) => !['done', 'not needed'].includes(state))
    expect(open.length).toBeGreaterThan(12)
    for (const step of open) {
      expect([step.label, fixesOf(visit.facts, step).length > 0]).toEqual([step.label, !canTick(visit.facts, step).ok])
    }
  })

  it('everything that is missing for a release names a step of the route', () => {
    const visit = here({ plan: flat(0.018), used: true, openHolds: [{ reason: 'bent' }], openFindings: 1 })
    const labels = computeRoute(visit.facts).map(({ label }) => label)
    const gaps = completeness(visit.facts)
    expect(gaps.length).toBeGreaterThan(10)
    expect(gaps.filter(({ label }) => !labels.includes(label))).toEqual([])
  })
})
