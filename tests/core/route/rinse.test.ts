import { describe, expect, it } from 'vitest'
import type { StepRef } from '@/lib/core/route/keys'
import { rinseNow, type RinsedStep } from '@/lib/core/route/rinse'
import { noRules, type OwnStep } from '@/lib/core/route/rules'
import { defaultRouteSettings } from '@/lib/core/route/settings'
import { walkThrough, walks } from '@/lib/core/route/walk'
import { angleFlat, arrival, cleanUp, flat, noCut, order, Visit } from './visit'

/** Written out here, so that a step which is forgotten in the tables is found. */
const chips: readonly StepRef[] = [
  'guides',
  'inserts',
  'weld',
  'straighten',
  'steam-holes',
  'groove',
  'port',
  'open-chamber',
  'angle-cut',
  'flat-cut',
  'deburr',
  'intake',
  'bolt-seats',
  'bolt-fit',
  'seat-work',
  'blend',
]
const measured: readonly StepRef[] = [
  'chambers',
  'seat-before',
  'flow-before',
  'flow-after-port',
  'flow-after-cut',
  'seat-after',
  'flow-after',
  'finished',
]

const cutHead = () =>
  Visit.of({ targetCc: 60, plan: flat(0.018) })
    .does('check-in')
    .does('thickness')
    .does('chambers')
    .does('seat-before')

describe('blow off, rinse, dry', () => {
  it('comes after the cut and before the seats are read', () => {
    const head = cutHead()
    expect(head.step('rinse')).toMatchObject({ state: 'to do', why: 'after machining' })
    expect(head.step('rinse')?.waitsFor).toContain('Flat cut')
    head.does('flat-cut')
    expect(head.step('rinse')).toMatchObject({ state: 'ready' })
    expect(head.step('seat-after')?.waitsFor).toEqual(['Rinse and dry'])
    expect(() => head.copy().does('seat-after')).toThrow(/rinse and dry comes first/)
    head.does('rinse')
    expect(head.state('seat-after')).toBe('ready')
    head.does('seat-after').does('deburr')
    // Deburring makes chips again, and cc is still to be read.
    expect(head.step('rinse')).toMatchObject({ state: 'do again', reason: 'machining was done after it' })
    expect(head.step('finished')?.waitsFor).toContain('Rinse and dry')
    head.does('rinse').does('finished')
    expect(head.state('rinse')).toBe('done')
  })

  it('waits with what is measured next, so that a head is rinsed once before it', () => {
    // cc after seat work: no seat check stands before it, so the rinse waits for the seat work.
    const head = Visit.of({ targetCc: 60, plan: noCut, ordered: ['chambers', 'guides', 'seat-work'] })
    head.does('check-in').does('chambers').does('guides')
    expect(head.step('rinse')?.waitsFor).toEqual(['Seat work'])
    head.does('seat-work')
    expect(head.state('rinse')).toBe('ready')
  })

  it('is asked of no head that nothing is cut on, and of none with nothing left to measure', () => {
    expect(Visit.of({ plan: noCut, ordered: ['chambers', 'flow-before'] }).state('rinse')).toBe('not on the route')
    // A mild clean-up reads thickness and straightness at its end: no cc, no flow, no seat.
    const mild = Visit.of({ plan: cleanUp(0.004) })
      .does('check-in')
      .does('thickness')
      .does('flat-cut', ['cut-depth', '', 0.003])
    expect(mild.state('rinse')).toBe('not on the route')
    // Seat work after the last measuring leads back to it: finished is opened again, and the rinse with it.
    const head = cutHead().does('flat-cut').does('deburr').does('rinse').does('seat-after').does('finished')
    expect(head.state('rinse')).toBe('done')
    head.knows({ ordered: ['steam-holes'] }).does('steam-holes')
    expect(head.state('rinse')).toBe('done')
    head.knows({ ordered: ['steam-holes', 'seat-work'] }).does('seat-work')
    expect(head.state('rinse')).toBe('do again')
  })

  it('comes before the first cc of a head that a vendor cut', () => {
    const head = cutHead().plans(angleFlat(0.063, 0.02)).does('seat-before')
    head.sends(order('A', ['angle-cut'], { angleIn: 0.063 })).receives('A', ['angle-cut'])
    head.does(arrival('arrival-count', 'A'))
    expect(head.step(arrival('arrival-figures', 'A'))?.waitsFor).toEqual(['Rinse and dry'])
    expect(head.does('rinse').state('angle-cut')).toBe('done')
    expect(head.step(arrival('arrival-figures', 'A'))?.waitsFor).toEqual([])
  })

  it('a waiver lets it pass until the next cut', () => {
    const head = cutHead().does('flat-cut').note('waive', 'rinse')
    expect(head.state('seat-after')).toBe('ready')
    head.does('deburr')
    expect(head.state('rinse')).toBe('do again')
  })

  it('a shop’s own machining and measuring count like ours', () => {
    const own = (id: OwnStep['id'], more: Partial<OwnStep>): OwnStep => ({
      id,
      label: id,
      station: 'port-bench',
      cells: ['○', '○', '○', '○'],
      when: '',
      limitIn: null,
      after: 'coating',
      waitsFor: [],
      undoneBy: [],
      owes: [],
      machining: false,
      retired: false,
      ...more,
    })
    const rules = { ...noRules, own: [own('own-1', { machining: true }), own('own-2', { owes: ['cc'] })] }
    const head = Visit.of({ plan: noCut, ordered: ['own-1', 'own-2'], settings: { ...defaultRouteSettings, rules } })
    head.does('check-in').does('own-1')
    expect(head.step('own-2')?.waitsFor).toEqual(['Rinse and dry'])
    expect(() => head.copy().does('own-2')).toThrow(/rinse/)
    head.does('rinse').does('own-2')
  })
})

describe('over every trial head', () => {
  it.each(walks(noRules))('$name: nothing is measured between machining and a rinse', ({ facts }) => {
    const { order: done, goesRound } = walkThrough(facts)
    expect(goesRound).toEqual([])
    let isDirty = false
    let rinses = 0
    for (const ref of done) {
      if (ref === 'rinse') rinses += 1
      isDirty = ref === 'rinse' ? false : isDirty || chips.includes(ref)
      const readsWhat = measured.includes(ref) && !(ref === 'finished' && facts.targetCc === null)
      expect(readsWhat && isDirty, `${ref} is measured with chips in it`).toBe(false)
    }
    if (!done.some((ref) => chips.includes(ref))) expect(rinses).toBe(0)
    if (facts.plan?.kind !== 'none') expect(rinses).toBeGreaterThan(0)
    // The final wash is the last that water touches.
    expect(done.indexOf('wash-out')).toBeGreaterThanOrEqual(done.includes('rinse') ? done.lastIndexOf('rinse') : -1)
  })
})

describe('where it stands, worked out from bare steps', () => {
  const wait = (label: string) =>
    ({ code: 'step', step: { stepId: 'wash-in', occurrence: '', orderId: null }, label }) as const
  const step = (ref: StepRef, more: Partial<RinsedStep> = {}): RinsedStep => ({
    ref,
    wait: wait(ref),
    state: 'to do',
    needed: true,
    owes: [],
    waits: () => [],
    isMachining: chips.includes(ref),
    ...more,
  })
  const cc: RinsedStep['owes'] = [{ kind: 'cc', label: 'cc', points: ['1'], missing: ['1'] }]
  const reads = (ref: StepRef, more: Partial<RinsedStep> = {}) => step(ref, { owes: cc, ...more })
  const never = { machinedSeq: 0, rinsedSeq: 0, washedOutSeq: 0 }

  it.each([
    ['nothing to measure', [step('flat-cut')], never, 'gone', [], []],
    ['nothing machined, nothing to machine', [reads('finished')], never, 'gone', [], []],
    ['a cut to come', [step('flat-cut'), reads('finished')], never, 'open', ['flat-cut'], []],
    ['a cut made', [reads('finished')], { machinedSeq: 4, rinsedSeq: 0, washedOutSeq: 0 }, 'open', [], ['finished']],
    ['washed out since', [reads('finished')], { machinedSeq: 4, rinsedSeq: 0, washedOutSeq: 5 }, 'gone', [], []],
    ['rinsed since', [reads('finished')], { machinedSeq: 4, rinsedSeq: 5, washedOutSeq: 0 }, 'done', [], []],
    [
      'cut since it was rinsed',
      [reads('finished')],
      { machinedSeq: 6, rinsedSeq: 5, washedOutSeq: 0 },
      'do again',
      [],
      ['finished'],
    ],
    [
      'all measured',
      [reads('finished', { state: 'done' })],
      { machinedSeq: 6, rinsedSeq: 5, washedOutSeq: 0 },
      'done',
      [],
      [],
    ],
    [
      'what is not needed',
      [reads('finished', { needed: false })],
      { machinedSeq: 6, rinsedSeq: 0, washedOutSeq: 0 },
      'gone',
      [],
      [],
    ],
    [
      'the one that waits for least says when',
      [
        reads('flow-after', { waits: () => [wait('blend'), wait('port')] }),
        reads('finished', { waits: () => [wait('blend')] }),
      ],
      { machinedSeq: 6, rinsedSeq: 0, washedOutSeq: 0 },
      'open',
      ['blend'],
      ['flow-after', 'finished'],
    ],
    [
      'a cutter’s own cc on the way is no measuring',
      [step('flat-cut', { owes: cc })],
      { machinedSeq: 6, rinsedSeq: 0, washedOutSeq: 0 },
      'gone',
      [],
      [],
    ],
    [
      'a cc that is only offered',
      [step('finished', { owes: cc.map((owed) => ({ ...owed, optional: true as const })) })],
      { machinedSeq: 6, rinsedSeq: 0, washedOutSeq: 0 },
      'gone',
      [],
      [],
    ],
  ] as const)('%s', (_, steps, history, state, after, before) => {
    const now = rinseNow(steps, history)
    expect(now.state).toBe(state)
    expect(now.after.map(({ label }) => label)).toEqual(after)
    expect([...now.before]).toEqual(before)
  })
})
