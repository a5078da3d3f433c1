import { describe, expect, it } from 'vitest'
import { canTick } from '@/lib/core/route/can-tick'
import { computeRoute } from '@/lib/core/route/compute-route'
import { tickRefusal, tickWarningText } from '@/lib/words/ticks'
import { keyOf, type StepRef } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import { angleFlat, arrival, flat, noCut, order, Visit, type Answer } from './visit'

const refusal = (visit: Visit, at: StepRef | StepKey) => {
  const result = canTick(visit.facts, typeof at === 'string' ? keyOf(at) : at)
  return result.ok ? null : { ...tickRefusal(result.refused), refused: result.refused }
}
const warnings = (visit: Visit, at: StepRef) => {
  const result = canTick(visit.facts, keyOf(at))
  return result.ok ? result.warnings.map(tickWarningText) : null
}

const here = (facts: Parameters<typeof Visit.of>[0] = {}) => Visit.of({ targetCc: 60, ...facts }).ticked('check-in')
const cc = (...chambers: number[]): Answer[] => chambers.map((chamber) => ['cc', String(chamber), 63])
const plugAndValves: Answer[] = [
  ['valves-used', '', 'own'],
  ['plug-used', '', 'shop'],
]

describe('a step that owes readings', () => {
  it('is refused and names each chamber without cc', () => {
    const visit = here({ plan: flat(0.018) }).read('chambers', ...cc(1, 2), ...plugAndValves)
    expect(refusal(visit, 'chambers')).toMatchObject({
      code: 'owed',
      message: 'Measure chambers: chamber 3 and chamber 4 have no cc yet.',
      refused: { code: 'owed', label: 'Measure chambers', readings: [{ kind: 'cc', points: ['3', '4'] }], first: [] },
    })
    visit.read('chambers', ...cc(3))
    expect(refusal(visit, 'chambers')?.message).toBe('Measure chambers: chamber 4 has no cc yet.')
    visit.read('chambers', ...cc(4))
    expect(refusal(visit, 'chambers')).toBeNull()
  })

  it('is not done by a tick without them, when it was waived and the plan no longer asks for it', () => {
    const visit = here({ plan: flat(0.04) })
    visit.note('waive', keyOf('dowel-fit')).plans(noCut)
    expect(visit.state('dowel-fit')).toBe('not needed')
    expect(refusal(visit, 'dowel-fit')?.code).toBe('owed')
    visit.read('dowel-fit', ['dowels', '', 'home'])
    expect(refusal(visit, 'dowel-fit')).toBeNull()
  })

  it('asks for one chamber when the job has no target', () => {
    const visit = here({ targetCc: null, plan: flat(0.018) }).read('chambers', ...cc(1), ...plugAndValves)
    expect(refusal(visit, 'chambers')).toBeNull()
  })

  it('names corners, straightness and the metal gone, in words', () => {
    const visit = here({ plan: flat(0.018) }).read('thickness', ['thickness', 'intake-1', 4.5])
    const message = refusal(visit, 'thickness')?.message ?? ''
    expect(message).toContain('exhaust end 1, intake end 2 and exhaust end 2 have no thickness yet')
    expect(message).toContain('across and along have no straightness yet')
    expect(message).toContain('no depth removed before this job yet')
  })

  it('takes words where words may stand, and a figure where a figure must', () => {
    const corners: Answer[] = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2'].map((at) => ['thickness', at, 4.5])
    const visit = here({ plan: flat(0.018) }).read('thickness', ...corners, ['straightness', 'across', 0])
    visit.read('thickness', ['removed-before', '', 'new thickness unknown'], ['straightness', 'along', 'looks fine'])
    expect(refusal(visit, 'thickness')?.message).toBe('Measure thickness: along has no straightness yet.')
  })

  it('wants one lift of each port, or the reason why not', () => {
    const visit = here({ ordered: ['flow-before'] }).read('flow-before', ['flow', 'intake@0.300', 201])
    expect(refusal(visit, 'flow-before')?.message).toBe('Flow run before: exhaust has no flow yet.')
    visit.read('flow-before', ['flow', 'exhaust@0.100', 'retainer meets the seal'])
    expect(refusal(visit, 'flow-before')).toBeNull()
  })

  it('takes no leak test in place of the runout: they are two things', () => {
    const visit = here({ ordered: ['seat-work'] }).read(
      'seat-work',
      ['seat-angles', '', '30 45 60'],
      ['seat-width', 'intake', 0.04],
      ['seat-width', 'exhaust', 0.06],
      ['sink', 'intake', 0.005],
      ['sink', 'exhaust', 0.005],
      ['stem-height', 'intake', 1.9],
      ['stem-height', 'exhaust', 1.9],
      ['seat-edge', '', 'none'],
    )
    expect(refusal(visit, 'seat-work')?.message).toBe('Seat work: 8 valves have no runout yet.')
    visit.read('seat-work', ['leak-test', '', 'tight'])
    expect(refusal(visit, 'seat-work')?.message).toBe('Seat work: 8 valves have no runout yet.')
    visit.read('seat-work', ['runout', '', 0.001])
    expect(refusal(visit, 'seat-work')).toBeNull()
  })

  it('asks for the depth off the face only when the face was cut', () => {
    const cut = () => here({ plan: angleFlat(0.063, 0.02), manifoldSpansHeads: true }).ticked('angle-cut', 'flat-cut')
    expect(refusal(cut().read('intake', ['intake-choice', '', 'port-match']), 'intake')).toBeNull()
    expect(refusal(cut().read('intake', ['intake-choice', '', 'cut-face']), 'intake')?.message).toBe(
      'Intake side: deck side of end 1, cover side of end 1, deck side of end 2 and cover side of end 2 have no depth off the intake face yet.',
    )
  })

  it('asks for a wedge off the face at its deck end and its cover end, at both ends of the head', () => {
    const points = (visit: Visit) => visit.step('intake')?.owes.find(({ kind }) => kind === 'face-depth')?.points
    expect(points(here({ plan: angleFlat(0.063, 0.02), manifoldSpansHeads: true }))).toEqual([
      ...['deck-1', 'cover-1', 'deck-2', 'cover-2'],
    ])
    expect(points(here({ plan: flat(0.03), manifoldSpansHeads: true }))).toEqual(['end-1', 'end-2'])
  })

  it('asks for cc at the stop and at size while the rate is unproven or the cut is deep', () => {
    const kinds = (visit: Visit) => visit.step('flat-cut')?.owes.flatMap((owed) => owed.points)
    expect(kinds(here({ plan: flat(0.018, { rateProven: true }) }))).toEqual([''])
    expect(kinds(here({ plan: flat(0.018, { rateProven: undefined }) }))).toEqual(['', 'at-stop', 'at-size'])
    expect(kinds(here({ plan: flat(0.025, { rateProven: true }) }))).toEqual(['', 'at-stop', 'at-size'])
  })

  it('asks of a finished head what its cut calls for', () => {
    const kinds = (facts: Parameters<typeof Visit.of>[0]) =>
      Visit.of(facts)
        .step('finished')
        ?.owes.filter((owed) => !owed.optional)
        .map((owed) => owed.kind)
    const mild = ['straightness', 'cutter-marks']
    const ccToo = ['cc', 'valves-used', 'plug-used']
    // Depth from touch-off is enough for a mild flat cut; a deep one and any angle cut are gauged at four corners.
    expect(kinds({ plan: flat(0.018) })).toEqual(mild)
    expect(kinds({ plan: flat(0.03) })).toEqual(['thickness', ...mild])
    expect(kinds({ plan: angleFlat(0.004, 0.004) })).toEqual(['thickness', ...mild])
    expect(kinds({ plan: flat(0.018), targetCc: 60 })).toEqual([...ccToo, ...mild])
    expect(kinds({ plan: flat(0.018), classMinCc: 58 })).toEqual([...ccToo, ...mild])
    expect(kinds({ plan: flat(0.018), finishAsked: true })).toEqual(['straightness', 'finish-how', 'cutter-marks'])
    const one = Visit.of({ plan: flat(0.018) }).read('chambers', ...cc(1))
    expect(one.step('finished')?.owes[0]).toMatchObject({ kind: 'cc', points: ['1'] })
  })

  it('lets a waived reading pass', () => {
    const visit = here({ plan: flat(0.018) }).read('chambers', ...cc(1, 2, 3), ...plugAndValves)
    const gap = refusal(visit, 'chambers')?.needs?.[0] ?? ''
    expect(refusal(visit.knows({ waivedGaps: [gap] }), 'chambers')).toBeNull()
  })
})

describe('the order of work', () => {
  it('nothing is done to a head that is not here', () => {
    expect(refusal(Visit.of({ plan: flat(0.018) }), 'deburr')?.message).toContain('check in comes first')
  })

  it('refuses a finished cc before the last cut and the seat work', () => {
    const visit = here({ plan: flat(0.018), ordered: ['seat-work'] }).answerWhatIsOwed(keyOf('finished'))
    expect(refusal(visit, 'finished')).toMatchObject({ code: 'owed' })
    expect(refusal(visit, 'finished')?.message).toContain('flat cut comes first')
    expect(refusal(visit, 'finished')?.message).toContain('seat work comes first')
  })

  it('refuses seats before guides', () => {
    const visit = here({ ordered: ['guides', 'seat-work'] }).answerWhatIsOwed(keyOf('seat-work'))
    expect(refusal(visit, 'seat-work')?.message).toBe('Seat work: guides comes first.')
  })

  it('keeps nothing clean after machining until it is washed', () => {
    const visit = here({ plan: flat(0.018), cameAssembled: true }).ticked('flat-cut', 'deburr')
    expect(refusal(visit, 'wrap')?.message).toContain('final wash comes first')
    expect(refusal(visit, 'assemble')?.message).toContain('final wash comes first')
  })

  it('does not cut while a reading that the cut destroys is missing', () => {
    const visit = here({ plan: flat(0.018), ordered: ['flow-before'] }).read('flat-cut', ['cut-depth', '', 0.018])
    const message = refusal(visit, 'flat-cut')?.message ?? ''
    for (const label of ['measure thickness', 'measure chambers', 'seat check before', 'flow run before']) {
      expect(message).toContain(`${label} comes first`)
    }
  })

  it('cuts the flat part off the new deck: after the angle cut and its arrival figures', () => {
    const visit = here({ plan: angleFlat(0.063, 0.02) })
      .ticked('thickness', 'chambers', 'seat-before')
      .sends(order('A', ['angle-cut'], { angleIn: 0.063 }))
      .receives('A', ['angle-cut'])
      .read('flat-cut', ['cut-depth', '', 0.02])
    expect(refusal(visit, 'flat-cut')?.message).toBe('Flat cut: arrival measurements comes first.')
    visit.does(arrival('arrival-count', 'A')).does('rinse').does(arrival('arrival-figures', 'A'))
    expect(refusal(visit, 'flat-cut')).toBeNull()
  })

  it('only warns where the order is customary: seat work before the last flat cut is ordinary', () => {
    const visit = here({ plan: flat(0.018), used: true, ordered: ['seat-work'] }).ticked(
      'wash-in',
      'crack',
      'seat-before',
    )
    expect(warnings(visit.answerWhatIsOwed(keyOf('seat-work')), 'seat-work')).toEqual([])
    const early = here({ plan: flat(0.018), used: true }).answerWhatIsOwed(keyOf('thickness'))
    expect(warnings(early, 'thickness')).toEqual([
      'Strip and wash usually comes first. It is not done yet.',
      'Crack check usually comes first. It is not done yet.',
    ])
  })

  it('waits for a cut plan, and for parts', () => {
    const ordered = here({ ordered: ['flat-cut'], targetCc: null }).read('flat-cut', ['cut-depth', '', 0.018])
    expect(refusal(ordered, 'flat-cut')?.message).toContain('there is no cut plan yet')
    const waits = here({
      ordered: ['springs'],
      partsWaits: [{ step: keyOf('springs'), what: 'inner springs', open: true }],
    }).ticked('heights')
    expect(refusal(waits.answerWhatIsOwed(keyOf('springs')), 'springs')?.message).toBe(
      'Springs: inner springs not received.',
    )
  })
})

describe('a head that is elsewhere, held, or says stop', () => {
  it('held: the owner decides first', () => {
    const visit = here({ ordered: ['port'], openHolds: [{ reason: 'cut too deep' }] })
    expect(refusal(visit, 'port')).toMatchObject({
      code: 'hold',
      message: 'This head is on hold: cut too deep. The owner must decide first.',
    })
  })

  it('away: it goes on when it is back', () => {
    const visit = here({ plan: angleFlat(0.063, 0.02) }).sends(order('A', ['angle-cut']))
    expect(refusal(visit, 'thickness')).toMatchObject({
      code: 'wrong-state',
      message: 'This head is out at Northgate Grinding, order 26-A. Receive it first.',
    })
    expect(refusal(visit, arrival('arrival-count', 'A'))?.code).toBe('wrong-state')
  })

  it('an order that has not gone out yet keeps its steps for the vendor', () => {
    const visit = here({ plan: angleFlat(0.063, 0.02), orders: [order('A', ['angle-cut'])] })
    expect(refusal(visit, 'angle-cut')?.message).toContain('is on the order to Northgate Grinding, order 26-A')
  })

  it('a crack means hold, whatever else is owed', () => {
    const visit = here({ used: true }).read('crack', ['crack', '', 'crack'])
    expect(refusal(visit, 'crack')).toEqual({
      code: 'hold',
      message: 'Crack check: crack found. Put the head on hold and get the owner.',
      refused: { code: 'stop', stops: [{ kind: 'crack', answer: 'crack' }] },
    })
  })

  it('so do cutter marks that reach the sealing area, and a last leak test that leaks', () => {
    const cut = here({ plan: flat(0.018) }).read('finished', ['cutter-marks', '', 'reaching'])
    expect(refusal(cut, 'finished')?.code).toBe('hold')
    const assembled = here({ cameAssembled: true }).ticked('assemble').read('leak', ['leak-test', '', 'leaks'])
    expect(refusal(assembled, 'leak')?.code).toBe('hold')
  })

  it('a seat check that leaks is no hold: it asks for seat work', () => {
    const visit = here({ plan: flat(0.018) }).ticked('thickness', 'chambers', 'seat-before', 'flat-cut')
    visit.does('rinse').does('seat-after', ['leak-test', '', 'leaks'])
    expect(visit.step('seat-work')).toMatchObject({ state: 'ready', why: 'the seat check failed' })
  })

  it('a step that is not on the route is refused, one that is done says so', () => {
    expect(refusal(here(), 'bolt-fit')?.code).toBe('wrong-state')
    expect(warnings(here(), 'check-in')).toEqual(['Check in is already ticked.'])
    const cut = here({ plan: flat(0.018) }).ticked('thickness', 'chambers', 'seat-before', 'flat-cut')
    expect(refusal(cut, 'flat-cut')?.message).toBe(
      'Flat cut is already ticked. If it was redone, take the tick back first.',
    )
  })

  it('hand over waits for release, or for the head to go back as it is', () => {
    const visit = here().answerWhatIsOwed(keyOf('hand-over'))
    expect(refusal(visit, 'hand-over')?.message).toContain('it has not been released')
    expect(refusal(here().answerWhatIsOwed(keyOf('hand-over')).note('release'), 'hand-over')).toBeNull()
    const pulled = here({ openHolds: [{ reason: 'crack' }] }).answerWhatIsOwed(keyOf('hand-over'))
    expect(refusal(pulled.note('return-as-is'), 'hand-over')).toBeNull()
  })
})

describe('a head on order', () => {
  it('is ticked nowhere, and every step says what it waits for', () => {
    const visit = Visit.of({ source: 'bought-cut', used: false, targetCc: 58, onOrder: true })
    const steps = computeRoute(visit.facts)
    expect(steps.length).toBeGreaterThan(3)
    for (const step of steps) {
      expect(step.waitsFor).toContainEqual({ code: 'arrival' })
      expect(step.state).toBe('to do')
      const may = canTick(visit.facts, step)
      expect(may).toEqual({ ok: false, refused: { code: 'on-order' } })
      expect(refusal(visit, step)?.message).toMatch(/is on order and not here yet/)
    }
    const come = visit.knows({ onOrder: false })
    expect(canTick(come.facts, keyOf('check-in'))).toMatchObject({ ok: false, refused: { code: 'owed' } })
  })
})
