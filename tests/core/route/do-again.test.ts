import { describe, expect, it } from 'vitest'
import type { StepRef } from '@/lib/core/route/keys'
import type { WorkId } from '@/lib/core/route/step-ids'
import { angleFlat, order, Visit } from './visit'

/** The work that undoes answers, then the answers: so told, nothing is to be done again yet. */
const work: StepRef[] = [
  'guides',
  'inserts',
  'weld',
  'port',
  'open-chamber',
  'angle-cut',
  'flat-cut',
  'seat-work',
  'blend',
]
const answers: StepRef[] = [
  'crack',
  'pressure',
  'thickness',
  'chambers',
  'seat-before',
  'flow-before',
  'flow-after-port',
  'deburr',
  'flow-after-cut',
  'intake',
  'bolt-seats',
  'bolt-fit',
  'bolt-reach',
  'dowel-fit',
  'seat-after',
  'flow-after',
  'heights',
  'springs',
  'rocker',
  'cam',
  'trial-fit',
  'finished',
  'ptv',
  'wash-out',
  'assemble',
  'leak',
  'wrap',
  'final',
]
const everything = [...work, ...answers]

const house = Visit.of({
  used: true,
  ordered: everything as WorkId[],
  plan: angleFlat(0.063, 0.02),
  manifoldSpansHeads: true,
  camInHead: true,
  targetCc: 60,
}).ticked('check-in', 'wash-in', ...everything)

const fullHouse = (): Visit => house.copy()

const again = (visit: Visit): string[] =>
  visit.route
    .filter((step) => step.state === 'do again')
    .map((step) => (step.stepId === 'flow' ? `flow-${step.occurrence}` : step.stepId))
    .sort()

/** Wrapping and the last inspection belong to every row: a head that was touched is neither wrapped nor inspected. */
const last = ['wrap', 'final']

const deckCut = [
  'finished',
  'ptv',
  'bolt-reach',
  'dowel-fit',
  'seat-after',
  'intake',
  'rocker',
  'cam',
  'deburr',
  'wash-out',
  'flow-after',
  'flow-after-cut',
]

describe('what must be done again', () => {
  const rows: [string, (visit: Visit) => Visit, string[]][] = [
    ['any deck cut', (visit) => visit.ticked('flat-cut'), deckCut],
    ['an angle cut', (visit) => visit.ticked('angle-cut'), [...deckCut, 'bolt-seats', 'bolt-fit', 'trial-fit']],
    [
      'seat work',
      (visit) => visit.ticked('seat-work'),
      ['seat-after', 'finished', 'heights', 'ptv', 'flow-after', 'blend', 'wash-out'],
    ],
    ['chamber work', (visit) => visit.ticked('open-chamber'), ['finished', 'flow-after', 'wash-out']],
    ['port work', (visit) => visit.ticked('port'), ['finished', 'flow-after', 'wash-out']],
    ['weld', (visit) => visit.ticked('weld'), ['crack', 'pressure', 'seat-after', 'finished']],
    ['an insert', (visit) => visit.ticked('inserts'), ['crack', 'pressure', 'seat-after', 'finished']],
    ['a guide', (visit) => visit.ticked('guides'), ['crack', 'pressure', 'seat-after', 'finished']],
    [
      'a valve changed',
      (visit) => visit.note('valve-changed'),
      ['finished', 'flow-after', 'heights', 'ptv', 'seat-after'],
    ],
  ]
  for (const [what, happens, expected] of rows) {
    it(`after ${what}`, () => {
      expect(again(fullHouse())).toEqual([])
      expect(again(happens(fullHouse()))).toEqual([...expected, ...last].sort())
    })
  }

  it('a vendor’s angle cut counts from the day it came back', () => {
    const visit = fullHouse().sends(order('A', ['angle-cut'], { angleIn: 0.063 }))
    expect(again(visit)).toEqual([])
    visit.receives('A', ['angle-cut'])
    expect(again(visit)).toEqual([...deckCut, 'bolt-seats', 'bolt-fit', 'trial-fit', ...last].sort())
  })

  it('what the vendor did himself at the same time stands', () => {
    const visit = fullHouse()
      .sends(order('A', ['angle-cut', 'bolt-seats'], { angleIn: 0.063 }))
      .receives('A', ['angle-cut', 'bolt-seats'])
    expect(visit.state('bolt-seats')).toBe('done')
    expect(visit.state('bolt-fit')).toBe('do again')
  })

  it('weld before the cut asks for the thickness again, after the cut for the finished measures', () => {
    const facts = { ordered: ['weld'] as WorkId[], plan: angleFlat(0.063, 0.02) }
    const before = Visit.of(facts).ticked('check-in', 'thickness', 'weld')
    expect(before.state('thickness')).toBe('do again')
    const after = Visit.of(facts).ticked('check-in', 'thickness', 'angle-cut', 'finished', 'weld')
    expect(after.state('thickness')).toBe('done')
    expect(after.state('finished')).toBe('do again')
  })

  it('pressure again if the cutter broke through', () => {
    const visit = fullHouse().read('port', ['break-through', '', 'broken'])
    expect(again(visit)).toEqual(['final', 'pressure', 'wrap'])
  })

  it('touches a waived step too, and says why', () => {
    const visit = fullHouse().note('waive', 'ptv')
    expect(visit.state('ptv')).toBe('waived')
    visit.ticked('flat-cut')
    expect(visit.step('ptv')).toMatchObject({ state: 'do again', reason: 'the deck was cut after it' })
  })

  it('leaves alone what was never done and what is no longer needed', () => {
    const visit = Visit.of({ plan: angleFlat(0.063, 0.02), camInHead: true }).ticked('check-in', 'cam')
    visit.knows({ camInHead: false }).ticked('angle-cut')
    expect(visit.state('cam')).toBe('done')
    expect(visit.state('finished')).toBe('to do')
  })

  it('a tick taken back takes back what it undid', () => {
    const visit = fullHouse().ticked('flat-cut').note('undo', 'flat-cut')
    // Its readings stay, so it stands as started.
    expect(visit.state('flat-cut')).toBe('started')
    expect(visit.state('finished')).toBe('done')
  })

  it('asks for new readings: those from before no longer count', () => {
    const visit = fullHouse().read('finished', ['cc', '1', 60], ['cc', '2', 60], ['cc', '3', 60], ['cc', '4', 60])
    const missing = () => visit.step('finished')?.owes.find((owed) => owed.kind === 'cc')?.missing
    expect(missing()).toEqual([])
    visit.ticked('flat-cut')
    expect(missing()).toEqual(['1', '2', '3', '4'])
    visit.read('finished', ['cc', '2', 57])
    expect(missing()).toEqual(['1', '3', '4'])
  })

  it('sends a seat that fails its check after seat work back to seat work', () => {
    const visit = fullHouse().read('seat-after', ['leak-test', '', 'leaks'])
    expect(visit.step('seat-work')).toMatchObject({
      state: 'do again',
      reason: 'the seat check after it failed',
    })
    visit.ticked('seat-work')
    expect(visit.state('seat-work')).toBe('done')
    expect(visit.state('seat-after')).toBe('do again')
  })
})

describe('a step that the owner let pass', () => {
  it('stays let pass when a tick over it is taken back', () => {
    const facts = { ordered: ['coating'] as WorkId[] }
    const visit = Visit.of(facts).ticked('check-in').note('waive', 'coating')
    expect(visit.state('coating')).toBe('waived')
    expect(visit.copy().note('tick', 'coating').state('coating')).toBe('done')
    expect(visit.copy().note('tick', 'coating').note('undo', 'coating').state('coating')).toBe('waived')
    expect(visit.copy().note('undo', 'coating').state('coating')).toBe('waived')
  })
})
