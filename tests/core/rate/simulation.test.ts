import { describe, expect, it } from 'vitest'
import { learnRate, type RateCut } from '../../../lib/core/rate/learn'
import { advisePass } from '../../../lib/core/rate/next-pass'
import { priorRate, rateForHead, type PriorSource, type Rate } from '../../../lib/core/rate/rate'
import { seeded } from './random'

/**
 * Heads with a truth that the advice never sees: the true rate, the errors of the cc and of the depth setting are drawn
 * at random; each head is followed through every pass that is advised, the rate learned from its own cuts as it goes.
 */
const heads = 10_000
const target = 60
const tolerance = 0.5
const depthErrorThou = 0.5
const betweenHeadPart = 0.03

type Draw = ReturnType<typeof seeded>

function cutOneHead(draw: Draw, record: Rate, trueK: number, uCc: number) {
  const read = (cc: number) => cc + draw.normal(0, uCc)
  let trueCc = target + 1 + 9 * draw.uniform()
  let reading = read(trueCc)
  const cuts: RateCut[] = []
  for (let pass = 0; pass < 50; pass++) {
    const rate = learnRate(rateForHead(record, betweenHeadPart), cuts, depthErrorThou)
    if (!rate.ok) throw new Error(rate.refusal.message)
    const advice = advisePass({
      presentCc: reading,
      uPresentCc: uCc,
      targetCc: target,
      toleranceCc: tolerance,
      rate: rate.value,
      depthErrorThou,
    })
    if (!advice.ok || advice.value.kind === 'none') {
      return { trueCc, cuts, refused: advice.ok ? null : advice.refusal.code }
    }
    const depthThou = advice.value.depthThou
    trueCc -= trueK * (depthThou + draw.normal(0, depthErrorThou))
    const after = read(trueCc)
    cuts.push({
      depthThou,
      beforeCc: reading,
      uBeforeCc: uCc,
      afterCc: after,
      uAfterCc: uCc,
      likeForLike: true,
    })
    reading = after
  }
  throw new Error('fifty passes and no end')
}

const priors: readonly (readonly [string, PriorSource])[] = [
  ['an outline', { kind: 'outline', openingAreaIn2: 10.1706 }],
  ['a perimeter', { kind: 'perimeter', perimeterIn: 11.3 }],
  ['nothing', { kind: 'none' }],
]
const uncertainties = [
  ['read well', 0.08],
  ['at the limit, u_V = t/2.5', tolerance / 2.5],
] as const

describe.each(priors)('ten thousand heads, the rate begun on %s', (_, source) => {
  it.each(uncertainties)('cc %s: fewer than 2.5 %% end under the tolerance', (_name, uCc) => {
    const draw = seeded(20_261)
    const prior = priorRate(source)
    if (!prior.ok) throw new Error(prior.refusal.message)
    const record = prior.value
    let spoiled = 0
    let passes = 0
    let reached = 0
    for (let head = 0; head < heads; head++) {
      // A rate is never nought or less, however wide the guess.
      const castingK = Math.max(0.2 * record.ccPerThou, draw.normal(record.ccPerThou, record.uCcPerThou))
      const trueK = castingK * (1 + draw.normal(0, betweenHeadPart))
      const end = cutOneHead(draw, record, trueK, uCc)
      if (end.trueCc < target - tolerance) spoiled++
      if (end.trueCc <= target + tolerance + 3 * uCc) reached++
      passes += end.cuts.length
    }
    const samplingError = 3 * Math.sqrt((0.025 * 0.975) / heads)
    expect(spoiled / heads).toBeLessThan(0.025 + samplingError)
    // Advice that never cuts would be safe too: nearly every head must come down to its target.
    expect(reached / heads).toBeGreaterThan(0.95)
    expect(passes / heads).toBeGreaterThan(1)
    expect(passes / heads).toBeLessThan(6)
  })
})

it('a casting that is cut again and again stays as safe, its record growing with each head', () => {
  const draw = seeded(7)
  let spoiled = 0
  const castings = 500
  const each = 10
  for (let casting = 0; casting < castings; casting++) {
    const prior = priorRate({ kind: 'perimeter', perimeterIn: 11.3 })
    if (!prior.ok) throw new Error(prior.refusal.message)
    let record = prior.value
    const castingK = draw.normal(record.ccPerThou, record.uCcPerThou)
    for (let head = 0; head < each; head++) {
      const trueK = castingK * (1 + draw.normal(0, betweenHeadPart))
      const end = cutOneHead(draw, record, trueK, 0.1)
      if (end.trueCc < target - tolerance) spoiled++
      const learned = learnRate(record, end.cuts, depthErrorThou)
      if (!learned.ok) throw new Error(learned.refusal.message)
      record = learned.value
    }
  }
  expect(spoiled / (castings * each)).toBeLessThan(0.025 + 3 * Math.sqrt((0.025 * 0.975) / (castings * each)))
})

it('without the advice, all the way to the target in one pass, far more are spoiled: the simulation can tell', () => {
  const draw = seeded(11)
  const prior = priorRate({ kind: 'none' })
  if (!prior.ok) throw new Error(prior.refusal.message)
  const { ccPerThou, uCcPerThou } = prior.value
  let spoiled = 0
  for (let head = 0; head < heads; head++) {
    const trueCc = target + 1 + 9 * draw.uniform()
    const depthThou = (trueCc - target) / ccPerThou
    if (trueCc - draw.normal(ccPerThou, uCcPerThou) * depthThou < target - tolerance) spoiled++
  }
  expect(spoiled / heads).toBeGreaterThan(0.2)
})
