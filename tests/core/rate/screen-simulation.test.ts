import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import type { Rate } from '../../../lib/core/rate/rate'
import { recordRate } from '../../../lib/core/rate/record-rate'
import type { CutToJudge } from '../../../lib/core/rate/screen'
import { seeded } from './random'

const scatter = { depthErrorThou: 0.5, betweenHeadPart: 0.03 }
const k0 = 1 / 6
const prior = (part: number, kind: Rate['prior']): Rate => ({
  ccPerThou: k0,
  uCcPerThou: part * k0,
  cuts: 0,
  prior: kind,
  firstGuessCcPerThou: k0,
})

type Draw = ReturnType<typeof seeded>
/** One chamber read twice with 0.3 cc and a burette of 0.2 cc, before and after: √(0.09/2 + 0.04/12). */
const uMean = Math.sqrt(0.045 + 0.04 / 12)

/** One head: its own rate, 20 to 60 thou, both means read; now and then a slip of one to three cc in what it took. */
function cutOf(draw: Draw, castingK: number, slips: number): { cut: CutToJudge; slipped: boolean } {
  const depthThou = 20 + 40 * draw.uniform()
  const k = castingK + draw.normal(0, 0.03 * k0)
  const slipped = draw.uniform() < slips
  const size = slipped ? (1 + 2 * draw.uniform()) * (draw.uniform() < 0.5 ? -1 : 1) : 0
  const took = k * (depthThou + draw.normal(0, 0.5)) + draw.normal(0, uMean) - draw.normal(0, uMean) + size
  const cut = {
    depthThou,
    beforeCc: 200,
    uBeforeCc: uMean,
    afterCc: 200 - took,
    uAfterCc: uMean,
    likeForLike: took > 0,
  }
  return { cut, slipped }
}

function run(record: Rate, truth: (draw: Draw) => number, slips: number, castings: number, seed: number) {
  const draw = seeded(seed)
  let [squares, slipped, caught, honest, lost] = [0, 0, 0, 0, 0]
  for (let casting = 0; casting < castings; casting++) {
    const castingK = truth(draw)
    const cuts = Array.from({ length: 6 }, () => cutOf(draw, castingK, slips))
    const { rate, judged } = must(
      recordRate(
        record,
        cuts.map(({ cut }) => cut),
        null,
        scatter,
      ),
    )
    squares += (rate.ccPerThou / castingK - 1) ** 2
    cuts.forEach((one, at) => {
      const out = judged[at]?.verdict !== 'counted'
      if (one.slipped) {
        slipped += 1
        if (out) caught += 1
      } else {
        honest += 1
        if (out) lost += 1
      }
    })
  }
  return { rms: Math.sqrt(squares / castings), caught: caught / slipped, lost: lost / honest }
}

/** A rate is never nought or less, however wide the guess. */
const drawn = (part: number) => (draw: Draw) => Math.max(0.3 * k0, draw.normal(k0, part * k0))

/**
 * Six cuts of a casting, 8 % of them with a slip of 1 to 3 cc. The design's figures, made on another bench: rms error of the
 * rate 2.4, 2.9 and 3.1 % for priors of 5, 15 and 25 %, 78 % of the slips left out.
 */
describe.each([
  ['an outline', 0.05, 0.027],
  ['a perimeter', 0.15, 0.032],
  ['nothing', 0.25, 0.0345],
] as const)('six cuts with slips, the rate begun on %s', (_, part, mostRms) => {
  it('the rate is about as good as the design asks, and most slips are left out', () => {
    const { rms, caught, lost } = run(prior(part, 'outline'), drawn(part), 0.08, 1500, 5)
    expect(rms).toBeLessThan(mostRms)
    expect(caught).toBeGreaterThan(0.72)
    expect(caught).toBeLessThan(0.85)
    expect(lost).toBeLessThan(0.02)
  })
})

const offBy28 = (times: number, slips: number) => run(prior(0.05, 'outline'), () => times * k0, slips, 1500, 6)

it('with a prior 28 % under the truth the record is doubted in time: about 5.3 %, under 2 % of true cuts left out', () => {
  const honest = offBy28(1.28, 0)
  expect(honest.rms).toBeLessThan(0.053)
  expect(honest.lost).toBeLessThan(0.02)
  expect(offBy28(1.28, 0.08).rms).toBeLessThan(0.06)
})

/**
 * Of the prior both sides must be alike: readings do not know which way it is off. By hand, with nothing doubted and one cut
 * of six left out: a prior of 5 % weighs 1/0.05² = 400, a cut of 40 thou (0.1036 cc² of readings and depth, 3 % between
 * heads) 1/(0.1036/6.667² + 0.0009) = 310; the prior pulls by 28 % × 400/(400 + 5 × 310) = 5.7 %, the cuts scatter by
 * 1/√1950 = 2.3 %: together 6.2 % of the prior. Of a truth that lies below that is more: 6.2/0.72 = 8.6 %.
 */
it('with a prior 28 % over the truth the rate is off by as much, and that is a larger part of the smaller truth', () => {
  const [above, below] = [offBy28(1.28, 0), offBy28(0.72, 0)]
  process.stdout.write(`prior under the truth: ${JSON.stringify(above)}; over it: ${JSON.stringify(below)}\n`)
  expect(below.lost).toBeLessThan(0.02)
  expect((0.72 * below.rms) / (1.28 * above.rms)).toBeGreaterThan(0.95)
  expect((0.72 * below.rms) / (1.28 * above.rms)).toBeLessThan(1.05)
  expect(0.72 * below.rms).toBeLessThan(0.062)
})

it('without the screening the same slips do more harm: the simulation can tell', () => {
  const draw = seeded(5)
  let [squares, screened] = [0, 0]
  for (let casting = 0; casting < 1500; casting++) {
    const castingK = drawn(0.15)(draw)
    const cuts = Array.from({ length: 6 }, () => cutOf(draw, castingK, 0.08).cut)
    const counted = cuts.map((cut) => ({ ...cut, ruling: 'count' as const }))
    squares += (must(recordRate(prior(0.15, 'outline'), counted, null, scatter)).rate.ccPerThou / castingK - 1) ** 2
    screened += (must(recordRate(prior(0.15, 'outline'), cuts, null, scatter)).rate.ccPerThou / castingK - 1) ** 2
  }
  expect(Math.sqrt(squares)).toBeGreaterThan(1.3 * Math.sqrt(screened))
})
