import { describe, expect, it } from 'vitest'
import { adviseAtMill, type MillInput } from '@/lib/core/at-mill/advice'
import { ownRate } from '@/lib/core/at-mill/own-rate'
import { readsAtBench, readsAtMill } from '@/lib/core/at-mill/reads-to-come'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepId } from '@/lib/core/route/step-ids'

type Told = readonly [StepId, ReadingKind, point: string, value: number | string]

/** Each entry is one event later than the one before. */
const readings = (told: readonly Told[]): MillInput['cuts']['readings'] =>
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

const input = (told: readonly Told[], over: Partial<MillInput> = {}, repeatabilityCc = 0.3): MillInput => ({
  cuts: {
    readings: readings(told),
    events: [],
    orders: [],
    deck: { deepEdge: 'exhaust', milledWidthIn: null, deckLengthIn: null, inset: null },
    burette: { divisionCc: 0.2, repeatabilityCc },
  },
  plan: { depthAtCentroidIn: 0.02, flatIn: 0.02 },
  centroidShare: null,
  rate: { ccPerThou: 0.16, uCcPerThou: 0.01, cuts: 8, prior: 'outline', firstGuessCcPerThou: 0.16 },
  depthErrorThou: 0,
  targetCc: 60,
  toleranceCc: 0.5,
  classMinimumCc: null,
  screenedCcPerThou: [],
  halfFirstPass: false,
  question: null,
  unread: false,
  ...over,
})
const cc = (chamber: string, value: number): Told => ['chambers', 'cc', chamber, value]
const depth = (thou: number): Told => ['flat-cut', 'cut-depth', '', thou / 1000]
const stop = (value: number): Told => ['flat-cut', 'cc', 'at-stop', value]
const reads = (told: readonly Told[], over: Partial<MillInput> = {}) =>
  readsAtMill(input(told, over), adviseAtMill(input(told, over)))

describe('how often the chambers are read before a cut', () => {
  const bench = { chambers: 1, readingCc: 0.3, divisionCc: 0.2, toleranceCc: 0.5 }

  it('one chamber: 0.09/(0.2² − 0.04/12) = 2.45, so 3; three readings give 0.183, two would give 0.220', () => {
    expect(readsAtBench(bench)).toBe(3)
  })
  it('four chambers share it: 0.09/(4·0.04 − 0.00333) = 0.57, so 1', () => {
    expect(readsAtBench({ ...bench, chambers: 4 })).toBe(1)
  })
  it('the division counts by its square over twelve: 0.4 leaves 0.04 − 0.01333, so 0.09/0.02667 = 3.375 and 4', () => {
    expect(readsAtBench({ ...bench, divisionCc: 0.4 })).toBe(4)
  })
  it('exactly enough is enough: 0.3 cc a reading, no division, 0.375 asked of one chamber: 0.09/0.0225 = 4', () => {
    expect(readsAtBench({ ...bench, divisionCc: 0, toleranceCc: 0.375 })).toBe(4)
  })
  it('never, where the division is too coarse: 1²/12 = 0.083 over 0.04; nor past 40 readings', () => {
    expect(readsAtBench({ ...bench, divisionCc: 1 })).toBeNull()
    // 9/(0.04 − 0.00333) = 245.
    expect(readsAtBench({ ...bench, readingCc: 3 })).toBeNull()
  })
})

describe('how often the chambers are read at the mill', () => {
  it('before the cut as the card says: one more of a chamber that was read twice', () => {
    expect(reads([cc('1', 63), cc('1', 63)])).toEqual([{ chamber: '1', readings: 1 }])
  })

  // Three readings to 0.3 with division 0.2: u² = 0.03 + 0.00333 = 0.03333. A pass of d thou at a rate of ± u_k:
  // u² = 0.03333 + (u_k·d)² before it is read; n readings at the stop u² = 0.09/n + 0.00333, the two weighed together.
  const thrice = [cc('1', 63), cc('1', 63), cc('1', 63)]
  it('at the stop once, where the depth leaves it known: 17 thou at ± 0.01 leaves 0.25, with one reading 0.19', () => {
    // 1/(1/(0.0333 + 0.0289) + 1/0.0933) = 0.0373, u 0.193, under 0.2.
    const advice = adviseAtMill(input(thrice)).advice
    expect(advice.code).toBe('cut')
    expect(reads(thrice)).toEqual([{ chamber: '1', readings: 1 }])
  })
  it('twice, where the rate is known worse: ± 0.02, whether the stop lies at 10 thou or at 18', () => {
    // 10 thou: 0.0333 + 0.04 = 0.0733; one 1/(1/0.0733 + 1/0.0933) = 0.203²; two 1/(1/0.0733 + 1/0.0483) = 0.171².
    // 18 thou: 0.0333 + 0.1296 = 0.163; one 1/(1/0.163 + 1/0.0933) = 0.244²; two 1/(1/0.163 + 1/0.0483) = 0.193².
    const rate = { ...input([]).rate, uCcPerThou: 0.02 }
    expect(reads(thrice, { rate })).toEqual([{ chamber: '1', readings: 2 }])
    // Of 18 thou 10 are off already: what is cut since the last reading counts.
    expect(reads([...thrice, depth(10)], { rate })).toEqual([{ chamber: '1', readings: 2 }])
  })
  it('none, where the rate is proven and the pass goes the whole way', () => {
    const sure = { rate: { ...input([]).rate, uCcPerThou: 0.0001 }, unread: true, targetCc: 62.84 }
    expect(adviseAtMill(input(thrice, sure)).advice).toMatchObject({ code: 'cut', bound: 'nominal' })
    expect(reads(thrice, sure)).toEqual([])
  })
  it('none, when nothing is to be read', () => {
    expect(reads([])).toEqual([])
    expect(reads([...thrice, depth(18), stop(59.8), stop(59.8), stop(59.8)])).toEqual([])
  })
})

describe('the rate of this head', () => {
  // One chamber, no division: 64.0 ± 0.3 loses 1.2 ± 0.424 over 10 thou, believed 0.16 ± 0.01:
  // k = 0.16 − 0.01²·10·(1.6 − 1.2)/(0.424² + 0.1²) = 0.16 − 0.0004/0.19 = 0.15789.
  const facts = (told: readonly Told[]) => {
    const { cuts, ...rest } = input(told)
    return { ...rest, cuts: { ...cuts, burette: { divisionCc: 0, repeatabilityCc: 0.3 } } }
  }
  const told = [cc('1', 64), depth(10), stop(62.8)]

  it('is what its own cut shows, and nothing before a chamber was read after one', () => {
    expect(ownRate(facts(told))?.ccPerThou).toBeCloseTo(0.16 - 0.0004 / 0.19, 9)
    expect(ownRate(facts([cc('1', 64)]))).toBeNull()
    expect(ownRate(facts([cc('1', 64), depth(10)]))).toBeNull()
  })
  it('of a depth saved with its cc counts that depth; a cc that was not read at the mill is none of it', () => {
    const { cuts, ...rest } = facts(told)
    const together = cuts.readings.map((one) => (one.kind === 'cut-depth' ? { ...one, seq: 3 } : one))
    const atOnce = ownRate({ ...rest, cuts: { ...cuts, readings: together } })
    expect(atOnce?.ccPerThou).toBeCloseTo(0.16 - 0.0004 / 0.19, 9)
    expect(ownRate(facts([cc('1', 64), depth(10), ['finished', 'cc', '1', 62.3]]))).toBeNull()
  })
  it('stays when the cut goes on: the next depth was not read yet', () => {
    expect(ownRate(facts([...told, depth(20)]))?.ccPerThou).toBeCloseTo(0.16 - 0.0004 / 0.19, 9)
  })
})
