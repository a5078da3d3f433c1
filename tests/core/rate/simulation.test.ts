import { describe, expect, it } from 'vitest'
import { furtherReadings, type HeadRead } from '../../../lib/core/at-mill/further-readings'
import { headEstimate } from '../../../lib/core/at-mill/head-estimate'
import { chamberMean, type ChamberMean } from '../../../lib/core/chamber/burette'
import { mean } from '../../../lib/core/mean'
import { must } from '../../../lib/core/errors'
import { advisePass } from '../../../lib/core/rate/next-pass'
import { priorRate, rateForHead, type PriorSource, type Rate } from '../../../lib/core/rate/rate'
import { recordRate } from '../../../lib/core/rate/record-rate'
import type { CutToJudge } from '../../../lib/core/rate/screen'
import { seeded } from './random'

/**
 * Heads with a truth that the advice never sees: the true rate, each reading of the burette and each depth are drawn at
 * random; each head is followed through every pass that is advised, read as often as is asked for, its rate learned from
 * its own cut as it goes.
 */
const heads = 10_000
const target = 60
const tolerance = 0.5
const depthErrorThou = 0.5
const betweenHeadPart = 0.03
const readingCc = 0.3
const burette = { divisionCc: 0.2, repeatabilityCc: readingCc }

type Draw = ReturnType<typeof seeded>

/** A reading: the person's scatter, then the nearest mark of the burette. */
const readOf = (draw: Draw, cc: number): number => Math.round((cc + draw.normal(0, readingCc)) / 0.2) * 0.2
const meanOf = (readings: readonly number[]): ChamberMean => must(chamberMean(readings, burette))
const twice = (draw: Draw, cc: number): number[] => [readOf(draw, cc), readOf(draw, cc)]

function headRead(before: number[][], since: (number[] | null)[], depthThou: number, rate: Rate): HeadRead {
  return {
    chambers: before.map((readings, at) => {
      const now = since[at]
      return { chamber: String(at + 1), before: meanOf(readings), since: now ? meanOf(now) : null }
    }),
    depthThou,
    uDepthThou: depthErrorThou,
    rate,
  }
}

type End = { readonly trueCc: number; readonly cut: CutToJudge | null; readonly passes: number }

/** `kept`: the touch-off holds, so each total has one error; else each pass adds one of its own. */
function cutOneHead(draw: Draw, record: Rate, trueK: number, chambers: number, kept: boolean): End {
  const rate = rateForHead(record, betweenHeadPart)
  const trueBefore = Array.from({ length: chambers }, () => target + 1 + 9 * draw.uniform())
  const spread = mean(trueBefore)
  // A head's chambers lie within a cc or so of each other.
  const truth = trueBefore.map((cc) => spread + (cc - spread) / 9)
  const before = truth.map((cc) => twice(draw, cc))
  let since: (number[] | null)[] = truth.map(() => null)
  let [depth, trueDepth, passes] = [0, 0, 0]
  const lost = (): number => trueK * trueDepth
  const again = (at: number): void => {
    const cc = readOf(draw, (truth[at] ?? 0) - lost())
    if (depth === 0) before[at]?.push(cc)
    else since[at] = [...(since[at] ?? []), cc]
  }
  for (let turn = 0; turn < 200; turn++) {
    const read = headRead(before, since, depth, rate)
    const state = headEstimate(read)
    if (!state) throw new Error('It was read.')
    const { cc, uCc, covCcPerThou } = state.mean
    const advice = advisePass({
      presentCc: cc,
      uPresentCc: uCc,
      covCcPerThou,
      targetCc: target,
      toleranceCc: tolerance,
      rate: state.rate,
      depthErrorThou,
      firstPass: depth === 0,
    })
    if (!advice.ok && advice.refusal.code === 'measure-again') {
      const asked = furtherReadings(read, 0.2, (one) => one.mean.uCc, tolerance / 2.5) ?? []
      if (asked.length === 0) throw new Error('More readings help.')
      for (const { chamber, readings } of asked) {
        for (let time = 0; time < readings; time++) again(Number(chamber) - 1)
      }
      continue
    }
    if (!advice.ok || advice.value.kind === 'none') {
      const readNow = since.flatMap((one, at) => (one ? [at] : []))
      const over = (of: readonly (number[] | null | undefined)[]) => readNow.map((at) => meanOf(of[at] ?? [0]))
      const u = (of: readonly ChamberMean[]) => Math.hypot(...of.map((one) => one.uCc)) / of.length
      const [from, to] = [over(before), over(since)]
      const cut = {
        depthThou: depth,
        beforeCc: mean(from.map((one) => one.meanCc)),
        uBeforeCc: u(from),
        afterCc: mean(to.map((one) => one.meanCc)),
        uAfterCc: u(to),
        likeForLike: true,
      }
      const took = depth > 0 && cut.beforeCc > cut.afterCc
      return { trueCc: mean(truth) - lost(), cut: took ? cut : null, passes }
    }
    const { depthThou } = advice.value
    depth += depthThou
    passes += 1
    const error = draw.normal(0, depthErrorThou)
    trueDepth = kept ? depth + error : trueDepth + depthThou + error
    since = truth.map((one, at) => (at === 0 ? twice(draw, one - lost()) : null))
  }
  throw new Error('two hundred turns and no end')
}

const priors: readonly (readonly [string, PriorSource])[] = [
  ['an outline', { kind: 'outline', openingAreaIn2: 10.1706 }],
  ['a perimeter', { kind: 'perimeter', perimeterIn: 11.3 }],
  ['nothing', { kind: 'none' }],
]
const samplingError = 3 * Math.sqrt((0.025 * 0.975) / heads)

describe.each(priors)('ten thousand heads, the rate begun on %s', (_, source) => {
  it.each([
    ['one chamber', 1, true],
    ['four chambers', 4, true],
  ] as const)('%s read twice: fewer than 2.5 in a hundred end under the tolerance', (_name, chambers, kept) => {
    const draw = seeded(20_261)
    const record = must(priorRate(source))
    let [spoiled, passes, reached] = [0, 0, 0]
    for (let head = 0; head < heads; head++) {
      // A rate is never nought or less, however wide the guess.
      const castingK = Math.max(0.2 * record.ccPerThou, draw.normal(record.ccPerThou, record.uCcPerThou))
      const trueK = castingK + draw.normal(0, betweenHeadPart * record.ccPerThou)
      const end = cutOneHead(draw, record, trueK, chambers, kept)
      if (end.trueCc < target - tolerance) spoiled++
      if (end.trueCc <= target + tolerance + 0.6) reached++
      passes += end.passes
    }
    expect(spoiled / heads).toBeLessThan(0.025 + samplingError)
    // Advice that never cuts would be safe too: nearly every head must come down to its target.
    expect(reached / heads).toBeGreaterThan(0.95)
    expect(passes / heads).toBeGreaterThan(1)
    expect(passes / heads).toBeLessThan(6)
  })
})

it('passes that are each touched off anew, so that their errors add up, are as safe', () => {
  const draw = seeded(20_262)
  const record = must(priorRate({ kind: 'perimeter', perimeterIn: 11.3 }))
  let spoiled = 0
  for (let head = 0; head < heads; head++) {
    const trueK = draw.normal(record.ccPerThou, Math.hypot(record.uCcPerThou, betweenHeadPart * record.ccPerThou))
    if (cutOneHead(draw, record, Math.max(0.03, trueK), 1, false).trueCc < target - tolerance) spoiled++
  }
  expect(spoiled / heads).toBeLessThan(0.025 + samplingError)
})

it('a casting that is cut again and again stays as safe, its record growing with each head', () => {
  const draw = seeded(7)
  const [castings, each] = [300, 10]
  let spoiled = 0
  for (let casting = 0; casting < castings; casting++) {
    const prior = must(priorRate({ kind: 'perimeter', perimeterIn: 11.3 }))
    const castingK = draw.normal(prior.ccPerThou, prior.uCcPerThou)
    const cuts: CutToJudge[] = []
    for (let head = 0; head < each; head++) {
      const { rate } = must(recordRate(prior, cuts, null, { depthErrorThou, betweenHeadPart }))
      const end = cutOneHead(draw, rate, castingK + draw.normal(0, betweenHeadPart * prior.ccPerThou), 4, true)
      if (end.trueCc < target - tolerance) spoiled++
      if (end.cut) cuts.push(end.cut)
    }
  }
  expect(spoiled / (castings * each)).toBeLessThan(0.025 + 3 * Math.sqrt((0.025 * 0.975) / (castings * each)))
})

it('without the advice, all the way to the target in one pass, far more are spoiled: the simulation can tell', () => {
  const draw = seeded(11)
  const { ccPerThou, uCcPerThou } = must(priorRate({ kind: 'none' }))
  let spoiled = 0
  for (let head = 0; head < heads; head++) {
    const trueCc = target + 1 + 9 * draw.uniform()
    const depthThou = (trueCc - target) / ccPerThou
    if (trueCc - draw.normal(ccPerThou, uCcPerThou) * depthThou < target - tolerance) spoiled++
  }
  expect(spoiled / heads).toBeGreaterThan(0.2)
})
