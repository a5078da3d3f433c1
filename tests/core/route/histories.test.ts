import { describe, expect, it } from 'vitest'
import { angleFlat, arrival, cleanUp, flat, order, Visit, type Answer } from './visit'

const cc = (...values: number[]): Answer[] => values.map((value, place) => ['cc', String(place + 1), value])
const labels = (visit: Visit): string[] =>
  visit.route.map((step) => (step.stepId === 'flow' ? `flow-${step.occurrence}` : step.stepId))

describe('a bare new head, cut flat to size', () => {
  it('goes from the counter to hand over', () => {
    // Booked: 63 cc now, 60 asked, flow before and after. The plan comes once it is measured.
    const head = Visit.of({ ordered: ['flow-before', 'flat-cut', 'flow-after'], targetCc: 60 })
    expect(head.state('check-in')).toBe('ready')
    expect(head.state('thickness')).toBe('to do')
    head.does('check-in')
    expect(head.state('thickness')).toBe('ready')
    head
      .does('thickness')
      .does('chambers', ...cc(63.1, 62.9, 63, 63))
      .does('seat-before')
      .does('flow-before')
    expect(head.step('flat-cut')?.waitsFor).toEqual(['the cut plan'])

    head.plans(flat(0.018, { rateProven: false }))
    expect(head.state('flat-cut')).toBe('ready')
    head.note('start', 'flat-cut')
    expect(head.state('flat-cut')).toBe('started')
    head.does('flat-cut', ['cc', 'at-stop', 61.4], ['cc', 'at-size', 60.1], ['cut-depth', '', 0.018])
    expect(head.state('finished')).toBe('to do')

    head
      .does('deburr')
      .does('rinse')
      .does('seat-after')
      .does('flow-after')
      .does('finished', ...cc(60.2, 60, 60.1, 60.1))
    head.does('wash-out').does('wrap').does('final')
    expect(head.missing).toEqual([])
    expect(head.state('hand-over')).toBe('to do')
    head.note('release').does('hand-over')
    expect(head.route.every((step) => step.state === 'done')).toBe(true)
    // Eighteen thou: nothing about bolts, dowels, rockers or pistons was asked.
    expect(labels(head)).toEqual([
      'check-in',
      'thickness',
      'chambers',
      'seat-before',
      'flow-before',
      'flat-cut',
      'deburr',
      'rinse',
      'seat-after',
      'flow-after',
      'finished',
      'wash-out',
      'wrap',
      'final',
      'hand-over',
    ])
  })
})

describe('a used pair’s head, first planned flat, then tilted by a vendor', () => {
  const measured = (): Visit =>
    Visit.of({ used: true, targetCc: 60, chambers: 4, manifoldSpansHeads: true, plan: flat(0.018) })
      .does('check-in')
      .does('wash-in')
      .does('crack')
      .does('thickness')
      .does('chambers', ...cc(70, 70, 70, 70))
      .does('seat-before')

  it('keeps what was done, marks what is new, and says what is no longer needed', () => {
    const head = measured().knows({ camInHead: false })
    head.plans(flat(0.06)).plans(angleFlat(0.063, 0.02))
    for (const step of ['angle-cut', 'bolt-seats', 'bolt-fit', 'trial-fit'] as const) {
      expect(head.step(step)?.isNew, step).toBe(true)
    }
    expect(head.step('flat-cut')?.isNew).toBe(false)
    expect(head.state('thickness')).toBe('done')
    // The seats are to be read at every chamber now: two were read, six are owed, while they still can be had.
    expect(head.step('seat-before')).toMatchObject({
      state: 'do again',
      reason: 'more readings needed',
    })
    expect(head.step('seat-before')?.owes[0]?.missing).toHaveLength(6)
    expect(head.step('angle-cut')?.waitsFor).toEqual(['Seat check before'])

    head.plans(flat(0.018))
    expect(head.step('bolt-fit')).toMatchObject({
      state: 'not needed',
      reason: 'not needed: the plan is now flat cut',
    })
  })

  it('goes out, comes back, and owes all that an angle cut makes necessary', () => {
    const head = measured().plans(angleFlat(0.063, 0.02)).does('seat-before')
    head.sends(order('A', ['angle-cut'], { angleIn: 0.063 }))
    expect(head.step('angle-cut')).toMatchObject({ outside: true, station: 'outside', owes: [] })
    expect(head.step('deburr')?.waitsFor).toContain('Northgate Grinding, order 26-A')
    head.receives('A', ['angle-cut'])
    expect(head.state('angle-cut')).toBe('done')
    expect(head.state('flat-cut')).toBe('to do')
    head
      .does(arrival('arrival-count', 'A'))
      .does('rinse')
      .does(arrival('arrival-figures', 'A'), ['vendor-marks', '', '63 EX'])
    head.does('flat-cut', ['cut-depth', '', 0.02])
    for (const step of ['intake', 'bolt-seats', 'bolt-fit', 'bolt-reach', 'dowel-fit', 'trial-fit', 'ptv'] as const) {
      expect(head.state(step), step).not.toBe('not on the route')
    }
    head.does('deburr').does('rinse').does('seat-after', ['leak-test', '', 'leaks'])
    expect(head.step('seat-work')?.why).toBe('the seat check failed')
    head.does('seat-work', ['seat-edge', '', 'edge'])
    expect(head.step('seat-after')).toMatchObject({
      state: 'do again',
      reason: 'the seats were worked after it',
    })
    expect(head.step('blend')?.state).toBe('ready')
    head.does('blend').does('rinse').does('seat-after', ['leak-test', '', 'tight']).finishes()
    expect(head.missing).toEqual([])
    expect(head.step('seat-work')?.state).toBe('done')
    expect(head.step('final')?.state).toBe('done')
  })

  it('metal that is off stays off: the tilt’s follow-up is owed under any later plan', () => {
    const head = measured().plans(angleFlat(0.063, 0.02))
    head
      .sends(order('A', ['angle-cut'], { angleIn: 0.063 }))
      .receives('A', ['angle-cut'])
      .plans(flat(0.01))
    expect(head.state('bolt-fit')).not.toBe('not needed')
    expect(head.state('flat-cut')).toBe('to do')
  })
})

describe('a used head for a clean-up, with a mishap', () => {
  it('is skimmed, inspected, found too rough, skimmed again, and everything after is asked for again', () => {
    const head = Visit.of({ used: true, cameAssembled: true, plan: cleanUp(0.008) })
    for (const step of ['check-in', 'wash-in', 'crack', 'thickness'] as const) head.does(step)
    head.does('flat-cut', ['cut-depth', '', 0.004]).does('deburr')
    // A skim of four thou stays quiet: no seat check, no bolts, no pistons.
    expect(head.state('seat-after')).toBe('not on the route')
    head.finishes()
    expect(head.missing).toEqual([])
    expect(head.state('final')).toBe('done')

    head.note('undo', 'flat-cut').does('flat-cut', ['cut-depth', '', 0.007])
    const again = head.route.filter((step) => step.state === 'do again').map((step) => step.stepId)
    expect(again).toEqual(['deburr', 'finished', 'wash-out', 'wrap', 'final'])
    expect(head.missing).toContain('Deburr and chamfer must be done again: the deck was cut after it')
    head.finishes()
    expect(head.missing).toEqual([])
  })
})
