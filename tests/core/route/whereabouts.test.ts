import { describe, expect, it } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { progress } from '@/lib/core/route/progress'
import { whereabouts, type WhereaboutsExtra } from '@/lib/core/route/whereabouts'
import { angleFlat, flat, order, Visit } from './visit'

const nothing: WhereaboutsExtra = {
  arrived: true,
  onOrder: false,
  released: false,
  handedOver: false,
  returnedAsIs: false,
  scrapped: false,
}
const where = (visit: Visit, extra: Partial<WhereaboutsExtra> = {}) =>
  whereabouts(visit.facts, { ...nothing, ...extra })

describe('where a head is', () => {
  const here = () => Visit.of({ plan: flat(0.018), ordered: ['springs'] }).ticked('check-in')
  const springs = { step: keyOf('springs'), what: 'springs', open: true }

  it('before it comes', () => {
    expect(where(Visit.of({}), { arrived: false })).toBe('expected')
    expect(where(Visit.of({}), { arrived: false, onOrder: true })).toBe('on order')
  })

  it('while it is here', () => {
    expect(where(here())).toBe('in house')
    expect(where(here().knows({ partsWaits: [springs] }))).toBe('waiting for parts')
    expect(where(here().knows({ partsWaits: [{ ...springs, open: false }] }))).toBe('in house')
    expect(
      where(
        here()
          .knows({ partsWaits: [springs] })
          .ticked('springs'),
      ),
    ).toBe('in house')
    expect(where(here().knows({ openFindings: 1 }))).toBe('waiting for an answer')
    expect(where(here().knows({ openHolds: [{ reason: 'crack' }], openFindings: 1 }))).toBe('held')
    expect(where(here().finishes())).toBe('finished')
  })

  it('at a vendor, held or not, until it is received', () => {
    const visit = Visit.of({ plan: angleFlat(0.063, 0.02) })
      .ticked('check-in')
      .sends(order('A', ['angle-cut']))
    expect(where(visit)).toBe('away')
    expect(where(visit.knows({ openHolds: [{ reason: 'dropped' }] }))).toBe('away')
    expect(where(visit.receives('A', []))).toBe('held')
  })

  it('when it has left', () => {
    expect(where(here(), { released: true })).toBe('released')
    expect(where(here(), { released: true, handedOver: true })).toBe('handed over')
    expect(where(here(), { returnedAsIs: true })).toBe('returned as is')
    expect(where(here(), { returnedAsIs: true, handedOver: true })).toBe('handed over')
    expect(where(here(), { scrapped: true })).toBe('scrapped')
  })
})

describe('the scale of a head', () => {
  it('has one mark a step, long where a reading is owed, outside below, a clamp at the first open step', () => {
    const visit = Visit.of({ plan: angleFlat(0.063, 0.02), ordered: ['port'] })
      .ticked('check-in')
      .sends(order('A', ['angle-cut']))
    const marks = progress(visit.route, true)
    const mark = (label: string) => marks.find((entry) => entry.label === label)
    expect(marks).toHaveLength(visit.route.length)
    expect(mark('Angle cut')).toMatchObject({ outside: true, owesReading: false })
    expect(mark('Port work')).toMatchObject({ owesReading: false })
    expect(mark('Measure thickness')).toMatchObject({ owesReading: true, held: true })
    expect(marks.filter((entry) => entry.held)).toHaveLength(1)
    expect(progress(visit.route, false).some((entry) => entry.held)).toBe(false)
  })
})
