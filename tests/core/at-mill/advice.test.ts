import { describe, expect, it } from 'vitest'
import { adviseAtMill, type MillInput } from '../../../lib/core/at-mill/advice'
import type { Rate } from '../../../lib/core/rate/rate'
import type { ReadingKind } from '../../../lib/core/readings/types'
import type { StepId } from '../../../lib/core/route/step-ids'

const proven: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.002, cuts: 8, prior: 'outline' }
type Read = MillInput['cuts']['readings'][number]
type Told = readonly [StepId, ReadingKind, point: string, value: number | string]

/** Each entry is one event later than the one before. */
const readings = (told: readonly Told[]): Read[] =>
  told.map(([stepId, kind, point, value], at) => ({
    id: String(at),
    seq: at + 1,
    kind,
    point,
    value: typeof value === 'number' ? value : null,
    text: String(value),
    notTaken: null,
    step: { stepId, occurrence: '', orderId: null },
  }))

const chambers = (...values: number[]): Told[] =>
  values.flatMap((cc, at): Told[] => [0, 1].map(() => ['chambers', 'cc', String(at + 1), cc]))
const depth = (thou: number): Told => ['flat-cut', 'cut-depth', '', thou / 1000]
const stop = (cc: number, point = 'at-stop'): Told => ['flat-cut', 'cc', point, cc]

const input = (told: readonly Told[], over: Partial<MillInput> = {}): MillInput => ({
  cuts: {
    readings: readings(told),
    events: [],
    orders: [],
    deck: { deepEdge: 'exhaust', milledWidthIn: null, deckLengthIn: null, inset: null },
    burette: { divisionCc: 0.2, repeatabilityCc: 0.1 },
  },
  plan: { depthAtCentroidIn: 0.018, flatIn: 0.018 },
  centroidShare: null,
  rate: proven,
  depthErrorThou: 0.5,
  targetCc: 60,
  toleranceCc: 0.5,
  classMinimumCc: null,
  screenedCcPerThou: [],
  halfFirstPass: false,
  question: null,
  unread: false,
  ...over,
})
const advise = (told: readonly Told[], over: Partial<MillInput> = {}) => adviseAtMill(input(told, over)).advice

describe('the next thing to do at the mill', () => {
  const four = chambers(63, 63.2, 62.8, 63)

  it('measure first', () => {
    expect(advise([])).toEqual({ code: 'not-measured' })
  })

  it('3 cc at six thou per cc: cut to 18.0; what is off is taken from it; then read', () => {
    expect(advise(four)).toMatchObject({ code: 'cut', stopAtThou: 18, offThou: 0, moreThou: 18, thenRead: '1' })
    const more = advise([...four, depth(15.5)])
    expect(more).toMatchObject({ code: 'cut', stopAtThou: 18, offThou: 15.5 })
    expect(more).toHaveProperty('moreThou', expect.closeTo(2.5, 9))
    expect(advise([...four, depth(18)])).toEqual({ code: 'read-now', chamber: '1', isSmallest: false, offThou: 18 })
  })

  it('without a reading where the rate is proven and the cut shallow', () => {
    expect(advise([...four, depth(18)], { unread: true })).toEqual({ code: 'whole-way', offThou: 18 })
  })

  it('after the reading: within half a cc there is nothing to cut', () => {
    expect(advise([...four, depth(18), stop(60.1)])).toEqual({ code: 'nothing', atTarget: false })
    expect(advise([...four, depth(18), stop(59.9)])).toEqual({ code: 'nothing', atTarget: true })
    expect(advise([...four, depth(18), stop(61)])).toMatchObject({ code: 'cut', offThou: 18 })
  })

  it('a depth saved with the cc is cut already when the cc is read', () => {
    const facts = input([...four, depth(18), stop(61)])
    const together = facts.cuts.readings.map((one) => (one.kind === 'cut-depth' ? { ...one, seq: 10 } : one))
    const { advice } = adviseAtMill({ ...facts, cuts: { ...facts.cuts, readings: together } })
    // 18 thou took 2 cc: what is left is cut on top of it.
    expect(advice).toMatchObject({ code: 'cut', offThou: 18 })
    expect(advice.code === 'cut' && advice.stopAtThou).toBeGreaterThan(18.5)
  })

  it('a new touch-off starts the count again', () => {
    const anew: Told = ['flat-cut', 'touch-off', '', 'new']
    expect(advise([...four, depth(15.5), anew])).toMatchObject({ code: 'cut', stopAtThou: 2.5, offThou: 0 })
    expect(advise([...four, depth(15.5), anew, depth(2.5)])).toMatchObject({ code: 'read-now', offThou: 2.5 })
  })

  it('with a class minimum the smallest chamber is the one to read', () => {
    const over = { classMinimumCc: 59 }
    expect(advise(four, over)).toMatchObject({ code: 'cut', thenRead: '3' })
    expect(advise([...four, depth(18)], over)).toMatchObject({ code: 'read-now', chamber: '3', isSmallest: true })
    // What was read of chamber 3 is its own: 62.8 → 59.2, so the mean of 63.0 is down by as much.
    const { state } = adviseAtMill(input([...four, depth(18), stop(59.2, 'at-stop-3')], over))
    expect(state?.smallest.chamber).toBe('3')
    expect(state?.mean.cc).toBeLessThan(60)
  })

  it('says how many readings more, and of which chamber', () => {
    // One chamber, s 0.3, read twice: u 0.220; 0.5 is less than 2.5 of it, three readings open it.
    const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
    const cuts = { ...input(chambers(63)).cuts, burette }
    expect(advise([], { cuts })).toEqual({
      code: 'read-more',
      further: [{ chamber: '1', readings: 1 }],
      provesCc: null,
    })
    expect(advise([], { cuts: { ...cuts, burette: { ...burette, divisionCc: 1 } } })).toEqual({
      code: 'too-coarse',
      provesCc: null,
    })
  })

  it('a reading at the mill before the first cut is a repeat of the one before', () => {
    const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
    const told = [...chambers(63), stop(63)]
    const cuts = { ...input(told).cuts, burette }
    expect(advise([], { cuts })).toMatchObject({ code: 'cut' })
  })

  it('one reading cannot prove the class minimum: the smallest chamber again', () => {
    const burette = { divisionCc: 0.2, repeatabilityCc: 0.3 }
    const told = chambers(64, 64, 62.6, 64)
    const cuts = { ...input(told).cuts, burette }
    const advice = advise([], { cuts, classMinimumCc: 62.1 })
    // 0.5 cc of room at six thou per cc: half a thou is safe when it is known to 0.1386; √(0.09/n + 0.00333) is at n = 6.
    expect(advice).toEqual({ code: 'read-more', further: [{ chamber: '3', readings: 4 }], provesCc: 62.1 })
    expect(advise([], { cuts, classMinimumCc: 62.5 })).toEqual({ code: 'no-safe-pass', bound: 'class-minimum' })
  })

  it('hold, under the target or under the class minimum', () => {
    expect(advise(chambers(59.4, 59.4))).toEqual({ code: 'hold', under: 'target' })
    expect(advise(chambers(63, 61), { classMinimumCc: 61.1 })).toEqual({ code: 'hold', under: 'class-minimum' })
  })

  it('no further pass while the cut of this head is asked about', () => {
    const question = { tookCc: 1.3, expectedCc: 3.3, depthThou: 20 }
    expect(advise([...four, depth(18), stop(62)], { question })).toEqual({ code: 'question', ...question })
  })

  it('a screened cut of the record may be the truth: the lesser safe depth', () => {
    const told = chambers(63, 63)
    expect(advise(told, { screenedCcPerThou: [0.065] })).toMatchObject({ bound: 'nominal', stopAtThou: 18 })
    const least = advise(told, { screenedCcPerThou: [1 / 4.7] })
    // 3.5 cc of room at 4.7 thou per cc are 16.45 thou: the safe depth is less, the nominal stays 18.
    expect(least).toMatchObject({ code: 'cut', bound: 'screened', nominalThou: 18 })
    expect(least).toHaveProperty('stopAtThou', expect.any(Number))
    if (least.code === 'cut') expect(least.stopAtThou).toBeLessThan(16.45)
  })

  it('a record in doubt: half the way at the first pass, not after it', () => {
    expect(advise(four, { halfFirstPass: true })).toMatchObject({ code: 'cut', stopAtThou: 9, bound: 'doubted' })
    const second = advise([...four, depth(9), stop(61.5)], { halfFirstPass: true })
    expect(second).toMatchObject({ code: 'cut', bound: 'nominal' })
  })
})
