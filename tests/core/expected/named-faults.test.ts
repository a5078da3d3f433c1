import { describe, expect, it, test } from 'vitest'
import { questionsOf } from '@/lib/core/expected/questions'
import { stopsOf } from '@/lib/core/expected/stops'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import { asked, typedFigures, unknownHead } from './facts'

const said = (facts: ExpectedFacts, typed: Readonly<Record<string, string>>) =>
  asked(facts, typed).map(({ kind, point, side, slip, oneOf }) => ({
    at: `${kind}|${point}`,
    side,
    slip: slip?.text ?? null,
    oneOf,
  }))

const stopped = (facts: ExpectedFacts, typed: Readonly<Record<string, string>>) =>
  stopsOf({
    ...facts,
    here: Object.fromEntries(typedFigures(typed).map((one) => [`${one.kind}|${one.point}`, one.value])),
  })

describe('faults that were kept without a word', () => {
  it('6.39 cc for 63.9', () => {
    const typed = { 'cc|1': '63.8', 'cc|2': '6.39', 'cc|3': '64.0', 'cc|4': '63.7' }
    expect(said(unknownHead, typed)).toEqual([{ at: 'cc|2', side: 'low', slip: '63.9', oneOf: [] }])
  })

  it('6.39 cc for 63.9 in the first chamber read, by the nominal volume', () => {
    const facts = { ...unknownHead, chamber: { ...unknownHead.chamber, nominalLessGoneCc: 64 } }
    expect(said(facts, { 'cc|1': '6.39' })).toEqual([{ at: 'cc|1', side: 'low', slip: '63.9', oneOf: [] }])
  })

  it('a corner 0.100 too thick: which one is known by the new thickness', () => {
    const facts = { ...unknownHead, stepId: 'thickness', thickness: { newIn: 4.5, goneIn: 0.004 } } as const
    const typed = {
      'thickness|intake-1': '4.496',
      'thickness|exhaust-1': '4.5955',
      'thickness|intake-2': '4.4965',
      'thickness|exhaust-2': '4.496',
    }
    expect(said(facts, typed)).toEqual([{ at: 'thickness|exhaust-1', side: 'high', slip: null, oneOf: [] }])
  })

  it('a corner 0.100 too thick, new thickness unknown: it is one of these four', () => {
    const typed = {
      'thickness|intake-1': '4.496',
      'thickness|exhaust-1': '4.5965',
      'thickness|intake-2': '4.4965',
      'thickness|exhaust-2': '4.496',
    }
    const all = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']
    const questions = said({ ...unknownHead, stepId: 'thickness' }, typed)
    expect(questions.map(({ at }) => at)).toEqual(all.map((point) => `thickness|${point}`))
    expect(questions.every(({ oneOf }) => all.every((point) => oneOf.includes(point)))).toBe(true)
  })

  it('a corner a tenth of the others, on a head that may have lost any amount before', () => {
    const facts = { ...unknownHead, stepId: 'thickness', thickness: { newIn: 4.179, goneIn: null } } as const
    const typed = {
      'thickness|intake-1': '4.1776',
      'thickness|exhaust-1': '.41759',
      'thickness|intake-2': '4.1776',
      'thickness|exhaust-2': '4.1781',
    }
    expect(said(facts, typed)).toContainEqual(expect.objectContaining({ at: 'thickness|exhaust-1', slip: '4.1759' }))
  })

  it('seat depth .014 for .105', () => {
    const facts = { ...unknownHead, stepId: 'seat-before' } as const
    const typed = { 'seat-depth|1-intake': '.104', 'seat-depth|2-intake': '.014', 'seat-depth|3-intake': '.106' }
    // .014 with its digits swapped is .104: a thing to offer, and no more than that.
    expect(said(facts, typed)).toEqual([{ at: 'seat-depth|2-intake', side: 'low', slip: '.104', oneOf: [] }])
  })

  it('seat depth .014 for .105, the only one read, by the record', () => {
    const intake = { ...unknownHead.seats.intake, recordNowIn: 0.11 }
    const facts = { ...unknownHead, stepId: 'seat-before', seats: { ...unknownHead.seats, intake } } as const
    expect(said(facts, { 'seat-depth|1-intake': '.014' })).toMatchObject([{ at: 'seat-depth|1-intake', side: 'low' }])
  })

  it('a seat deeper after the cut than before, without seat work', () => {
    const facts = { ...unknownHead, stepId: 'seat-after', before: { 'seat-depth|1-intake': 0.105 } } as const
    expect(stopped(facts, { 'seat-depth|1-intake': '.1071' })).toMatchObject([{ code: 'seat-deeper', beforeIn: 0.105 }])
    expect(stopped(facts, { 'seat-depth|1-intake': '.107' })).toEqual([])
    expect(stopped({ ...facts, seatWorkSince: true }, { 'seat-depth|1-intake': '.112' })).toEqual([])
  })

  it('flow 168, 18.4, 190', () => {
    const facts = { ...unknownHead, stepId: 'flow' } as const
    const typed = { 'flow|intake@0.300': '168', 'flow|intake@0.400': '18.4', 'flow|intake@0.500': '190' }
    expect(said(facts, typed)).toEqual([{ at: 'flow|intake@0.400', side: 'low', slip: '184', oneOf: [] }])
  })

  it('an installed height under coil bind, whatever the lift', () => {
    const facts = { ...unknownHead, stepId: 'heights' } as const
    const typed = { 'installed-height|intake': '1.050', 'coil-bind|intake': '1.060' }
    expect(stopped(facts, typed)).toMatchObject([
      { code: 'coil-bind-under-lift', keys: ['installed-height|intake', 'coil-bind|intake'], liftIn: null },
    ])
  })

  it('180 thou at the mill for 21.3', () => {
    const mill = { ...unknownHead.mill, adviceIn: 0.0213, planFlatIn: 0.03 }
    const facts = { ...unknownHead, stepId: 'flat-cut', mill } as const
    expect(said(facts, { 'cut-depth|': '180 thou' })).toEqual([
      { at: 'cut-depth|', side: 'high', slip: '18.0 thou', oneOf: [] },
    ])
    expect(said(facts, { 'cut-depth|': '23.3 thou' })).toEqual([])
    expect(said(facts, { 'cut-depth|': '23.4 thou' })).toMatchObject([{ side: 'high' }])
    expect(said(facts, { 'cut-depth|': '2.1 thou' })).toMatchObject([{ side: 'low' }])
  })
})

describe('the count at the mill', () => {
  const mill = { ...unknownHead.mill, adviceIn: 0.018, planFlatIn: 0.03, lastTotalIn: 0.0155 }
  const facts = { ...unknownHead, stepId: 'flat-cut', mill, millDepthIn: 0.0155 } as const
  it('a total is never less than the last', () => {
    expect(said(facts, { 'cut-depth|': '2.5 thou' })).toMatchObject([{ side: 'low' }])
    expect(said(facts, { 'cut-depth|': '18 thou' })).toEqual([])
  })
  // 18.0 advised less 15.5 that is off is 2.5 from the new touch-off, and 2 over it at most.
  it('touched off anew it begins again', () => {
    const anew = { ...facts, mill: { ...mill, touchedOffAnew: true } }
    expect(said(anew, { 'cut-depth|': '2.5 thou' })).toEqual([])
    expect(said(anew, { 'cut-depth|': '4.6 thou' })).toMatchObject([{ side: 'high' }])
  })
})

test('straightness and runout: so many times the limit', () => {
  // Ten times 0.002; three times 0.002.
  const flat = { ...unknownHead, stepId: 'thickness' } as const
  expect(said(flat, { 'straightness|across': '.020' })).toEqual([])
  expect(said(flat, { 'straightness|across': '.0205' })).toMatchObject([{ side: 'high' }])
  expect(said({ ...unknownHead, stepId: 'seat-work' }, { 'runout|': '.006' })).toEqual([])
  expect(said({ ...unknownHead, stepId: 'seat-work' }, { 'runout|': '.0065' })).toMatchObject([{ side: 'high' }])
})

test('each that is off the record by itself is asked about by itself, not as one of several', () => {
  const intake = { ...unknownHead.seats.intake, recordNowIn: 0.1 }
  const facts = { ...unknownHead, stepId: 'seat-before', seats: { ...unknownHead.seats, intake } } as const
  const typed = { 'seat-depth|1-intake': '.130', 'seat-depth|2-intake': '.131', 'seat-depth|3-intake': '.129' }
  expect(said(facts, typed).map(({ at, oneOf }) => [at, oneOf])).toEqual(Object.keys(typed).map((key) => [key, []]))
})

test('after a new touch-off what is typed comes on top of what was cut before', () => {
  const facts = {
    ...unknownHead,
    stepId: 'flat-cut',
    before: { 'cc|1': 64 },
    cut: { shallowIn: 0.0155, deepIn: 0.0155 },
    millDepthIn: 0.0155,
    mill: { ...unknownHead.mill, touchedOffAnew: true },
    chamber: {
      ...unknownHead.chamber,
      rate: { ccPerThou: 0.2, uCcPerThou: 0, priorCcPerThou: 0.2, betweenHeadPart: 0 },
    },
  } as const
  // 15.5 + 24.5 = 40 thou in all: 64 − 0.2·40 = 56.
  expect(said(facts, { 'cut-depth|': '24.5 thou', 'cc|at-size': '56.0' })).toEqual([])
  expect(said(facts, { 'cut-depth|': '24.5 thou', 'cc|at-size': '59.1' })).toMatchObject([{ side: 'high' }])
})

describe('together impossible, compared as typed decimals', () => {
  const facts = { ...unknownHead, stepId: 'heights', liftIn: { intake: 0.592, exhaust: 0.55 } } as const
  // 0.592 + 0.050 = 0.642 and 1.712 − 1.060 = 0.652 = 0.592 + 0.060: just enough, whatever doubles make of them.
  test('just enough is enough', () => {
    const typed = { 'retainer-to-seal|intake': '.642', 'installed-height|intake': '1.712', 'coil-bind|intake': '1.060' }
    expect(stopped(facts, typed)).toEqual([])
  })
  test('a tenth of a thou less is a stop', () => {
    const typed = {
      'retainer-to-seal|intake': '.6419',
      'installed-height|intake': '1.7119',
      'coil-bind|intake': '1.060',
    }
    expect(stopped(facts, typed).map(({ code }) => code)).toEqual(['retainer-under-lift', 'coil-bind-under-lift'])
  })
  test('a corner thicker after the cut by more than 2 thou', () => {
    const cut = {
      ...unknownHead,
      stepId: 'finished',
      before: { 'thickness|intake-1': 4.5 },
      cut: { shallowIn: 0.01, deepIn: 0.01 },
    } as const
    expect(stopped(cut, { 'thickness|intake-1': '4.502' })).toEqual([])
    expect(stopped(cut, { 'thickness|intake-1': '4.5021' })).toMatchObject([{ code: 'thicker-after-cut' }])
    const uncut = { ...cut, cut: { shallowIn: 0, deepIn: 0 } }
    expect(stopped(uncut, { 'thickness|intake-1': '4.6' })).toEqual([])
  })
  test('a leak above the flow', () => {
    const run = { ...unknownHead, stepId: 'flow', leakCfm: 12 } as const
    expect(stopped(run, { 'flow|intake@0.100': '12' })).toEqual([])
    expect(stopped(run, { 'flow|intake@0.100': '11.9' })).toMatchObject([{ code: 'leak-over-flow', leakCfm: 12 }])
  })
})

describe('what a chamber is held against', () => {
  const rate = { ccPerThou: 0.16, uCcPerThou: 0.008, priorCcPerThou: 0.16, betweenHeadPart: 0.03 }
  const cut = (more: Partial<ExpectedFacts['chamber']>, facts: Partial<ExpectedFacts> = {}): ExpectedFacts => ({
    ...unknownHead,
    stepId: 'finished',
    before: { 'cc|1': 63.9, 'cc|2': 64.1 },
    cut: { shallowIn: 0.02, deepIn: 0.02 },
    ...facts,
    chamber: { ...unknownHead.chamber, uBeforeCc: { '1': 0.3, '2': 0.3 }, rate, ...more },
  })

  // 63.9 − 0.16·20 = 60.7. u = 0.4706 with the reading's u = √(0.09 + 0.04/12) = 0.305505…: 3.5·√(0.09 + 0.0933333 +
  // 0.0064 + 0.009216 + 0.0256) = 3.5·√0.2245493 = 1.65852.
  test('after a cut its own value before less what the cut takes, and nothing else', () => {
    expect(asked(cut({}), { 'cc|1': '62.3', 'cc|2': '60.9' })).toEqual([])
    expect(
      said(cut({}), { 'cc|1': '62.4', 'cc|2': '62.3', 'cc|3': '62.3', 'cc|4': '62.4' }).map(({ at }) => at),
    ).toEqual(['cc|1'])
  })

  test('the depth typed beside it at the mill counts', () => {
    const mill = cut({}, { stepId: 'flat-cut', cut: { shallowIn: 0, deepIn: 0 } })
    expect(said(mill, { 'cut-depth|': '20 thou', 'cc|at-size': '60.7' })).toEqual([])
    expect(said(mill, { 'cut-depth|': '40 thou', 'cc|at-size': '60.7' })).toMatchObject([
      { at: 'cc|at-size', side: 'high' },
    ])
  })

  test('at the stop it lies anywhere between before and the end', () => {
    const mill = cut({}, { stepId: 'flat-cut', cut: { shallowIn: 0, deepIn: 0 } })
    expect(said(mill, { 'cut-depth|': '60 thou', 'cc|at-stop': '57.0', 'cc|at-size': '54.3' })).toEqual([])
    expect(said(mill, { 'cut-depth|': '60 thou', 'cc|at-stop': '75.0', 'cc|at-size': '54.3' })).toMatchObject([
      { at: 'cc|at-stop', side: 'high' },
    ])
  })

  test('where the chamber was worked on since, the others speak for it', () => {
    const facts = cut({ workedSince: true })
    expect(said(facts, { 'cc|1': '66.0', 'cc|2': '66.2', 'cc|3': '6.60' })).toMatchObject([
      { at: 'cc|3', slip: '66.0' },
    ])
  })

  // The others 12.0, 12.1, 12.1: 10 % of 12.1 is 1.21, less than 1.5.
  test('never more than a tenth of what is expected', () => {
    const typed = (odd: string) => ({ 'cc|1': '12.0', 'cc|2': '12.1', 'cc|3': '12.1', 'cc|4': odd })
    expect(said(unknownHead, typed('13.3'))).toEqual([])
    expect(said(unknownHead, typed('13.4'))).toMatchObject([{ at: 'cc|4' }])
  })

  test('two others that disagree cannot speak: then the mate, then the nominal volume', () => {
    const typed = { 'cc|1': '63.9', 'cc|2': '58.0', 'cc|3': '64.0' }
    expect(said(unknownHead, { 'cc|1': '63.9', 'cc|2': '58.0' })).toEqual([])
    expect(said({ ...unknownHead, mate: { 'cc|': 63.8 } }, { 'cc|1': '63.9', 'cc|2': '58.0' })).toMatchObject([
      { at: 'cc|2' },
    ])
    expect(said(unknownHead, typed)).toMatchObject([{ at: 'cc|2', side: 'low' }])
  })

  test('one that was kept and is odd is not put on those that are typed now', () => {
    const facts = { ...unknownHead, here: { 'cc|1': 63.9, 'cc|2': 6.39, 'cc|3': 64.1 } }
    expect(said(facts, { 'cc|4': '63.8' })).toEqual([])
  })
})

test('figures in one another’s cells are offered back', () => {
  const wanted = {
    intakeInstalledHeightIn: { value: 1.9, text: '1.900', unit: 'in', from: 'job' },
    exhaustInstalledHeightIn: { value: 1.7, text: '1.700', unit: 'in', from: 'casting' },
  } as const
  const facts = { ...unknownHead, stepId: 'heights', wanted } as const
  const typed = { 'installed-height|intake': '1.705', 'installed-height|exhaust': '1.895' }
  expect(said(facts, typed).map(({ at, slip }) => [at, slip])).toEqual([
    ['installed-height|intake', '1.895'],
    ['installed-height|exhaust', '1.705'],
  ])
})

test('a question names the limit that is broken', () => {
  const facts = { ...unknownHead, stepId: 'thickness', thickness: { newIn: 4.5, goneIn: 0 } } as const
  const [question] = questionsOf(typedFigures({ 'thickness|intake-1': '4.510' }), facts)
  expect(question?.expected).toMatchObject({ value: 4.5, high: 4.503, highWhy: { code: 'new-less-cut' } })
})
