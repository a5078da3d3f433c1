import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { StepId } from '@/lib/core/route/step-ids'
import { measuredOutside } from '@/lib/core/route/measured-outside'
import { angleShortIn, flatLeftIn } from '@/lib/core/route/outside-cuts'
import { angleFlat, arrival, flat, needed, order, Visit } from './visit'

/** A V head cut 63 thou at the deep edge and 20 flat; the vendor does the seats too. */
const sentOut = (scope: StepId[] = ['angle-cut', 'seat-work'], flatIn = 0) =>
  Visit.of({ plan: angleFlat(0.063, 0.02), targetCc: 60, ordered: ['seat-work'] })
    .ticked('check-in', 'thickness', 'chambers', 'seat-before')
    .sends(order('A', scope, { angleIn: 0.063, flatIn }))

const owedSteps = (visit: Visit): string[] =>
  visit.route
    .filter(({ state }) => !['done', 'waived', 'not needed'].includes(state))
    .map(({ stepId, orderId }) => `${stepId}${orderId ? `@${orderId}` : ''}`)

describe('what a vendor was asked to do', () => {
  it('is not done because it came back: only what was confirmed is', () => {
    const visit = sentOut().receives('A', [])
    expect(visit.state('angle-cut')).toBe('to do')
    expect(visit.state('seat-work')).toBe('to do')
    // Nobody here does it over before the arrival check has said what was done.
    expect(visit.step('seat-work')?.waitsFor).toContain('Arrival measurements')
    expect(() => visit.copy().does('seat-work')).toThrow('arrival measurements comes first')
  })

  it('confirmed at the arrival, it leaves the arrival check and what is out of scope', () => {
    const visit = sentOut().receives('A', ['angle-cut', 'seat-work'])
    expect(visit.step('seat-work')).toMatchObject({
      state: 'done',
      byVendor: { vendor: 'Northgate Grinding', number: '26-A' },
    })
    expect(owedSteps(visit)).toEqual(
      expect.arrayContaining([
        'arrival-count@A',
        'arrival-figures@A',
        'flat-cut',
        'bolt-seats',
        'bolt-fit',
        'bolt-reach',
        'trial-fit',
      ]),
    )
  })

  it('confirmed later, it was done before it came back: what was looked at since stands', () => {
    const visit = sentOut().receives('A', ['angle-cut'])
    visit.does(arrival('arrival-count', 'A')).does('rinse').does(arrival('arrival-figures', 'A'))
    visit.does('flat-cut').does('rinse').does('seat-after')
    expect(visit.state('seat-work')).toBe('ready')
    visit.confirms('A', 'seat-work')
    expect(visit.state('seat-work')).toBe('done')
    expect(visit.state('seat-after')).toBe('done')
  })

  it('an undone tick of ours does not hide a confirmation that came after it', () => {
    const visit = sentOut().receives('A', ['angle-cut'])
    visit.note('tick', 'seat-work').note('undo', 'seat-work').confirms('A', 'seat-work')
    expect(visit.state('seat-work')).toBe('done')
  })
})

describe('what was rejected', () => {
  it('is owed again, with the reason, and nothing of it counts', () => {
    const visit = sentOut().receives('A', ['angle-cut', 'seat-work']).rejects('A', 'seats out of round')
    for (const stepId of ['angle-cut', 'seat-work'] as const) {
      expect(visit.step(stepId)).toMatchObject({
        state: 'do again',
        reason: 'rejected: seats out of round',
        byVendor: null,
      })
    }
    expect(visit.missing).toContain('Seat work must be done again: rejected: seats out of round')
  })

  it('is done again here, and stands', () => {
    const visit = sentOut(['seat-work']).receives('A', ['seat-work']).rejects('A', 'seats out of round')
    visit.does('seat-work')
    expect(visit.state('seat-work')).toBe('done')
  })

  it('or by a second order, whose arrival is checked in place of the first', () => {
    const visit = sentOut().receives('A', ['angle-cut', 'seat-work']).rejects('A', 'seats out of round')
    visit.sends(order('B', ['angle-cut', 'seat-work'], { angleIn: 0.063 }))
    expect(visit.step('angle-cut')).toMatchObject({ outside: true, why: 'sent out to Northgate Grinding, order 26-B' })
    expect(needed(visit.facts)).not.toContain('arrival-figures@A')
    visit.receives('B', ['angle-cut', 'seat-work'])
    expect(visit.step('seat-work')).toMatchObject({
      state: 'done',
      byVendor: { vendor: 'Northgate Grinding', number: '26-B' },
    })
    expect(owedSteps(visit)).toEqual(expect.arrayContaining(['arrival-count@B', 'arrival-figures@B']))
  })

  it('its work still undoes what it disturbed: metal that is off does not come back', () => {
    const visit = sentOut(['weld']).receives('A', ['weld'])
    visit.ticked('crack').rejects('A', 'porous')
    expect(visit.state('crack')).toBe('done')
    const before = Visit.of({ plan: null, used: true, ordered: ['weld'] }).ticked('check-in', 'wash-in', 'crack')
    before
      .sends(order('A', ['weld']))
      .receives('A', ['weld'])
      .rejects('A', 'porous')
    expect(before.step('crack')).toMatchObject({ state: 'do again' })
    expect(before.step('weld')).toMatchObject({ state: 'do again', reason: 'rejected: porous' })
  })

  it('never makes fewer steps owed', () => {
    const outside: StepId[] = ['angle-cut', 'flat-cut', 'seat-work', 'weld', 'inserts', 'guides', 'bolt-seats']
    const depths = fc.integer({ min: 0, max: 30 }).map((thou) => thou / 1000)
    fc.assert(
      fc.property(
        fc.subarray(outside, { minLength: 1 }),
        fc.subarray(outside),
        fc.constantFrom(angleFlat(0.063, 0.02), flat(0.02)),
        depths,
        fc.option(fc.record({ flatIn: depths, angleIn: depths }), { nil: null }),
        fc.subarray(['seat-after', 'crack', 'finished', 'flat-cut', 'seat-work', 'weld'] as const),
        (scope, seen, plan, flatIn, measured, since) => {
          const told = Visit.of({ plan, used: true, targetCc: 60, ordered: ['seat-work', 'weld'] })
            .ticked('check-in', 'wash-in', 'crack', 'thickness', 'chambers', 'seat-before')
            .sends(order('A', scope, { angleIn: 0.063, flatIn }))
            .receives(
              'A',
              seen.filter((step) => scope.includes(step)),
              {
                measured: measured && { ...measured, toleranceIn: 0.002 },
              },
            )
            .ticked(...since)
          const rejected = told.copy().rejects('A', 'not as ordered')
          expect(owedSteps(rejected)).toEqual(expect.arrayContaining(owedSteps(told)))
        },
      ),
      { numRuns: 300 },
    )
  })
})

describe('what the corners say a vendor cut', () => {
  const deck = { deepEdge: 'exhaust', milledWidthIn: 6, deckLengthIn: 18, inset: { edgeIn: 0, endIn: 0 } } as const
  /** 4.500 before. Square to the old deck: intake edge 4.500 − f, exhaust edge 4.500 − f − w. */
  const measured = (flatIn: number, angleIn: number) => ({ flatIn, angleIn, toleranceIn: 0.002 })

  it('is taken for what was ordered while it is within the tolerance', () => {
    const visit = sentOut(['angle-cut'], 0.014).receives('A', ['angle-cut'], { measured: measured(0.0155, 0.0615) })
    expect(flatLeftIn(visit.facts)).toBeCloseTo(0.006, 9)
    expect(angleShortIn(visit.facts)).toBe(0)
    expect(visit.state('angle-cut')).toBe('done')
  })

  it('a flat part that is short stays ours: plan 20, asked 14, cut 9 leaves 11', () => {
    const visit = sentOut(['angle-cut'], 0.014).receives('A', ['angle-cut'], {
      measured: measured(0.009, 0.063),
    })
    expect(flatLeftIn(visit.facts)).toBeCloseTo(0.011, 9)
  })

  it('a short angle part is not done, and says by how much', () => {
    const visit = sentOut(['angle-cut']).receives('A', ['angle-cut'], { measured: measured(0, 0.05) })
    // 63 − 50 = 13 thou.
    expect(visit.step('angle-cut')).toMatchObject({
      state: 'do again',
      reason: 'the angle part is 0.013 in short by the corners',
    })
    // Metal was cut: what follows from an angle cut follows.
    expect(owedSteps(visit)).toEqual(expect.arrayContaining(['bolt-seats', 'bolt-fit', 'trial-fit']))
  })

  it('a new plan that wants no more than was cut, or a second order for the rest, makes it done', () => {
    const short = () => sentOut(['angle-cut']).receives('A', ['angle-cut'], { measured: measured(0, 0.05) })
    expect(short().plans(angleFlat(0.05, 0.03)).state('angle-cut')).toBe('done')
    const again = short()
      .sends(order('B', ['angle-cut'], { angleIn: 0.013 }))
      .receives('B', ['angle-cut'])
    expect(again.state('angle-cut')).toBe('done')
  })

  it('is read off the round of corners before it, and not across a cut of ours', () => {
    const key = (stepId: StepId, orderId: string | null) => ({ stepId, occurrence: '', orderId })
    const corners = (seq: number, stepId: StepId, orderId: string | null, intake: number, exhaust: number) =>
      (['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2'] as const).map((point) => {
        const value = point.startsWith('intake') ? intake : exhaust
        const id = `${seq}${point}`
        return {
          id,
          seq,
          kind: 'thickness' as const,
          point,
          value,
          text: '',
          notTaken: null,
          step: key(stepId, orderId),
        }
      })
    const first = [...corners(1, 'thickness', null, 4.5, 4.5), ...corners(2, 'arrival-figures', 'A', 4.48, 4.48)]
    const second = [...first, ...corners(4, 'arrival-figures', 'B', 4.475, 4.475)]
    expect(measuredOutside('A', first, deck, 0.002)).toMatchObject({ toleranceIn: 0.002 })
    expect(measuredOutside('A', first, deck, 0.002)?.flatIn).toBeCloseTo(0.02, 6)
    expect(measuredOutside('B', second, deck, 0.002)?.flatIn).toBeCloseTo(0.005, 6)
    const ours = { ...second[0]!, seq: 3, kind: 'cut-depth' as const, point: '', step: key('flat-cut', null) }
    expect(measuredOutside('B', [...second, ours], deck, 0.002)).toBeNull()
    expect(measuredOutside('C', second, deck, 0.002)).toBeNull()
  })
})
