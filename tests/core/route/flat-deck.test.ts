import { describe, expect, it } from 'vitest'
import type { FlatDeckFacts } from '@/lib/core/flat-deck/past-maker'
import { cleanUp, flat, needed, Visit } from './visit'

const flatDeck: FlatDeckFacts = {
  valves: ['1-intake', '1-exhaust', '2-intake', '2-exhaust'],
  hasInjectors: true,
  limits: {
    recession: { intake: { leastIn: 0.024, mostIn: 0.055 }, exhaust: { leastIn: 0.03, mostIn: 0.06 } },
    protrusion: { leastIn: 0.055, mostIn: 0.085 },
    thicknessLeastIn: 4.1,
  },
}
const head = () => Visit.of({ chambers: 2, flatDeck })

const before = (visit: Visit) =>
  visit.read(
    'seat-before',
    ['recession', '1-intake', 0.04],
    ['recession', '1-exhaust', 0.046],
    ['recession', '2-intake', 0.041],
    ['recession', '2-exhaust', 0.047],
    ['protrusion', '1', 0.06],
    ['protrusion', '2', 0.061],
  )

const kinds = (visit: Visit, at: Parameters<Visit['step']>[0]) =>
  (visit.step(at)?.owes ?? []).filter(({ optional }) => !optional).map(({ kind }) => kind)

/** Twelve thou off: every valve comes 12 thou nearer, every injector stands 12 farther out. */
function afterTwelve(visit: Visit, secondExhaustIn = 0.035): Visit {
  return visit.read(
    'seat-after',
    ['recession', '1-intake', 0.028],
    ['recession', '1-exhaust', 0.034],
    ['recession', '2-intake', 0.029],
    ['recession', '2-exhaust', secondExhaustIn],
  )
}

describe('the steps of a flat-deck head', () => {
  it.each([
    ['a clean-up', cleanUp(0.008)],
    ['a cut to a thickness', flat(0.012)],
  ])('%s: valves read before and after, no chamber measured or opened', (_, plan) => {
    const steps = needed(head().plans(plan).facts)
    expect(steps).toEqual(expect.arrayContaining(['thickness', 'seat-before', 'flat-cut', 'seat-after', 'finished']))
    for (const never of ['chambers', 'open-chamber', 'blend', 'angle-cut', 'bolt-seats']) {
      expect(steps).not.toContain(never)
    }
  })

  it('a target or a class minimum on the job does not bring the chambers back', () => {
    expect(needed(head().knows({ hasEngineData: true }).plans(cleanUp(0.008)).facts)).not.toContain('chambers')
  })

  it('what is ordered is done all the same', () => {
    expect(
      needed(
        head()
          .knows({ ordered: ['chambers'] })
          .plans(flat(0.012)).facts,
      ),
    ).toContain('chambers')
  })

  it('an angle cut that was ordered before the form was known is a flat one', () => {
    const steps = needed(head().knows({ ordered: ['angle-cut', 'flat-cut'] }).facts)
    expect(steps).not.toContain('angle-cut')
    expect(steps).toContain('flat-cut')
  })

  it('seat work without a cut: valves before and finished, no seat check after a cut', () => {
    const steps = needed(head().knows({ ordered: ['seat-work'] }).facts)
    expect(steps).toEqual(expect.arrayContaining(['seat-before', 'seat-work', 'finished']))
    expect(steps).not.toContain('seat-after')
    expect(kinds(head().knows({ ordered: ['seat-work'] }), 'finished')).toContain('recession')
  })

  it('a head with chambers keeps its steps', () => {
    const steps = needed(Visit.of({}).plans(flat(0.012)).facts)
    expect(steps).toContain('chambers')
    expect(needed(Visit.of({}).plans(cleanUp(0.004)).facts)).not.toContain('seat-before')
  })
})

describe('what its steps owe', () => {
  const visit = head().plans(flat(0.012, { rateProven: false }))

  it('every valve and every injector before the cut', () => {
    const owes = visit.step('seat-before')?.owes ?? []
    expect(owes.find(({ kind }) => kind === 'recession')?.points).toEqual(flatDeck.valves)
    expect(owes.find(({ kind }) => kind === 'protrusion')?.points).toEqual(['1', '2'])
    expect(kinds(visit, 'seat-before')).not.toContain('seat-depth')
  })

  it('at the mill the depth alone, never cc, however unproven the rate', () => {
    expect(kinds(visit, 'flat-cut')).toEqual(['cut-depth'])
  })

  it('finished: thickness, straightness and protrusion; the valves were read at the seat check', () => {
    const owed = kinds(visit, 'finished')
    expect(owed).toEqual(expect.arrayContaining(['thickness', 'straightness', 'protrusion']))
    expect(owed).not.toContain('cc')
    expect(owed).not.toContain('recession')
    expect(kinds(visit, 'seat-after')).toEqual(['recession', 'insert-marks', 'leak-test'])
  })

  it('protrusion is offered only where no limit for an injector is on record', () => {
    const none = Visit.of({ chambers: 2, flatDeck: { ...flatDeck, hasInjectors: false } }).plans(flat(0.012))
    expect(kinds(none, 'seat-before')).toEqual(['recession'])
  })
})

describe('judged by thickness, recession and protrusion', () => {
  const cut = () => before(head().plans(flat(0.012))).ticked('seat-before', 'flat-cut')

  it('a valve under the maker’s minimum calls for seat work, and the seat check is done again after it', () => {
    const visit = afterTwelve(cut(), 0.027).ticked('seat-after')
    expect(visit.step('seat-work')?.why).toBe('the seat check failed')
    expect(visit.missing).toContain(
      'chamber 2 exhaust is 0.0270 in below the deck, under the engine maker’s minimum of 0.0300 in',
    )
    visit.ticked('seat-work')
    expect(visit.state('seat-after')).toBe('do again')
    afterTwelve(visit, 0.032).ticked('seat-after')
    expect(visit.missing.filter((lack) => lack.includes('engine maker'))).toEqual([])
  })

  it('a valve deeper than the maximum is out of tolerance, and no seat is cut deeper for it', () => {
    const visit = afterTwelve(cut(), 0.064).ticked('seat-after')
    expect(visit.state('seat-work')).toBe('not on the route')
    expect(visit.missing).toContain(
      'chamber 2 exhaust is 0.0640 in below the deck, over the engine maker’s maximum of 0.0600 in',
    )
  })

  it('a figure on its limit is inside it', () => {
    const visit = afterTwelve(cut(), 0.03).ticked('seat-after')
    expect(visit.missing.filter((lack) => lack.includes('engine maker'))).toEqual([])
  })

  it('a proud valve is said so', () => {
    expect(afterTwelve(cut(), -0.004).ticked('seat-after').missing).toContain(
      'chamber 2 exhaust is 0.0040 in proud of the deck, under the engine maker’s minimum of 0.0300 in',
    )
  })

  it('injector and thickness at the finished head', () => {
    const visit = afterTwelve(cut())
      .ticked('seat-after')
      .read('finished', ['protrusion', '1', 0.072], ['protrusion', '2', 0.091], ['thickness', 'exhaust-2', 4.098])
      .ticked('finished')
    expect(visit.missing).toEqual(
      expect.arrayContaining([
        'the injector of chamber 2 stands 0.0910 in out of the deck, over the engine maker’s maximum of 0.0850 in',
        'exhaust end 2 is 4.0980 in thick, under the minimum of 4.1000 in',
      ]),
    )
  })

  it('without limits on record nothing is out', () => {
    const none = { leastIn: null, mostIn: null }
    const limits = { recession: { intake: none, exhaust: none }, protrusion: none, thicknessLeastIn: null }
    const visit = before(Visit.of({ chambers: 2, flatDeck: { ...flatDeck, limits } }).plans(flat(0.012)))
    afterTwelve(visit.ticked('seat-before', 'flat-cut'), -0.2).ticked('seat-after')
    expect(visit.missing.filter((lack) => lack.includes('2 exhaust'))).toEqual([])
    expect(visit.state('seat-work')).toBe('not on the route')
  })

  it('a patient machinist brings it to the hand over', () => {
    const visit = before(head().plans(flat(0.012)))
    visit.finishes()
    expect(visit.state('final')).toBe('done')
  })
})
