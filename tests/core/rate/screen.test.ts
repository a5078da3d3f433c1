import { describe, expect, it } from 'vitest'
import { must } from '../../../lib/core/errors'
import { learnRate, scatterCc } from '../../../lib/core/rate/learn'
import type { Rate } from '../../../lib/core/rate/rate'
import { recordRate } from '../../../lib/core/rate/record-rate'
import { screenCuts, zOfCut, type CutToJudge } from '../../../lib/core/rate/screen'

const scatter = { depthErrorThou: 0.5, betweenHeadPart: 0.03 }
const outline: Rate = { ccPerThou: 1 / 6, uCcPerThou: 0.05 / 6, cuts: 0, prior: 'outline', firstGuessCcPerThou: 1 / 6 }
const cut = (beforeCc: number, afterCc: number, depthThou = 20, over: Partial<CutToJudge> = {}): CutToJudge => ({
  depthThou,
  beforeCc,
  uBeforeCc: 0.15,
  afterCc,
  uAfterCc: 0.15,
  likeForLike: true,
  ...over,
})
const trueCuts = [cut(64.1, 60.8), cut(63.7, 60.35)]
/** 63.9 → 60.6, typed as 62.6: 1.3 cc for 3.3. */
const slip = cut(63.9, 62.6)
const record = (cuts: readonly CutToJudge[], prior = outline) => must(recordRate(prior, cuts, null, scatter))
const verdicts = (cuts: readonly CutToJudge[], prior = outline) =>
  record(cuts, prior).judged.map(({ verdict }) => verdict)

describe('a slip of one figure', () => {
  it('beside two true cuts leaves the rate as it was', () => {
    const without = must(learnRate(outline, trueCuts, 0.5, 0.03))
    for (const cuts of [
      [...trueCuts, slip],
      [slip, ...trueCuts],
    ]) {
      const { rate, judged } = record(cuts)
      expect(rate.ccPerThou).toBeCloseTo(without.ccPerThou, 12)
      expect(rate.uCcPerThou).toBeCloseTo(without.uCcPerThou, 12)
      expect(judged.filter(({ verdict }) => verdict === 'screened')).toHaveLength(1)
    }
  })

  it('with an outline alone leaves the rate as it was', () => {
    const { rate, judged, screenedCcPerThou } = record([slip])
    expect(rate).toMatchObject({ ccPerThou: outline.ccPerThou, uCcPerThou: outline.uCcPerThou, cuts: 0 })
    expect(judged[0]?.verdict).toBe('screened')
    expect(screenedCcPerThou[0]).toBeCloseTo(0.065, 12) // 1.3/20
    // By hand: (1.3 − 3.33333)/√(0.045 + 0.0069444 + 0.01 + 0.0277778) = −2.03333/0.299536.
    expect(judged[0]?.z).toBeCloseTo(-6.78827, 4)
    expect(zOfCut(slip, outline, scatter)).toBeCloseTo(-6.78827, 4)
  })

  it('its scatter, by hand: 0.0225 + 0.0225 + (0.5/6)² + (0.005·20)² = 0.0619444', () => {
    expect(scatterCc(slip, 1 / 6, scatter) ** 2).toBeCloseTo(0.0619444, 6)
    expect(scatterCc({ ...slip, uDepthThou: 0 }, 1 / 6, scatter) ** 2).toBeCloseTo(0.055, 12)
  })

  it('is counted once it is corrected, at once', () => {
    expect(verdicts([...trueCuts, cut(63.9, 60.6)])).toEqual(['counted', 'counted', 'counted'])
  })
})

describe('who decides', () => {
  it('the owner may count it, or leave any out', () => {
    expect(verdicts([...trueCuts, { ...slip, ruling: 'count' }])).toEqual(['counted', 'counted', 'counted'])
    expect(verdicts([{ ...cut(64.1, 60.8), ruling: 'leave-out' }, cut(63.7, 60.35)])).toEqual(['left-out', 'counted'])
    expect(record([{ ...cut(64.1, 60.8), ruling: 'leave-out' }]).rate.cuts).toBe(0)
  })

  it('a question stands, whatever later cuts say, until it is answered', () => {
    const asked = { ...cut(63.7, 60.35), questioned: true }
    expect(verdicts([...trueCuts, asked])).toEqual(['counted', 'counted', 'screened'])
    expect(verdicts([...trueCuts, { ...asked, ruling: 'count' }])).toEqual(['counted', 'counted', 'counted'])
  })

  it('what is not like for like is not judged', () => {
    const { judged, rate } = record([{ ...slip, likeForLike: false }, ...trueCuts])
    expect(judged[0]).toEqual({ z: null, verdict: 'not-like-for-like' })
    expect(rate.cuts).toBe(2)
  })

  it('the worst goes first, and the rest is judged again without it', () => {
    // Against the second slip the true cuts look odd too, until it is out.
    const cuts = [cut(64, 60.7), cut(80, 68, 20), cut(64, 60.6), cut(64, 60.65)]
    expect(screenCuts(outline, cuts, scatter).map(({ verdict }) => verdict)).toEqual([
      'counted',
      'screened',
      'counted',
      'counted',
    ])
  })
})

describe('a record that its cuts disagree with', () => {
  /** 28 % more than the outline says: 20 thou take 4.267 cc. 40 thou take 8.533. */
  const off = (more = 0) => cut(70, 70 - 8.533 - more, 40, { uBeforeCc: 0.05, uAfterCc: 0.05 })
  const right = (more = 0) => cut(70, 70 - 6.667 - more, 40, { uBeforeCc: 0.05, uAfterCc: 0.05 })

  /** Asked about on its day, and nobody has answered. */
  const asked = (more = 0) => ({ ...off(more), questioned: true })

  it('is doubted when more than half of the newest five are screened, from two on', () => {
    expect(record([off()])).toMatchObject({ doubted: false, judged: [{ verdict: 'screened' }] })
    const two = record([asked(), off(0.1)])
    expect(two).toMatchObject({ doubted: true, halfFirstPass: true, screenedCcPerThou: [] })
    expect(two.judged.map(({ verdict }) => verdict)).toEqual(['counted', 'counted'])
    // Prior 1/6 ± 25 %, two cuts of 0.213325 and 0.215825 with (0.005 + 0.0069444)/1600 + 0.005² each:
    // weights 576 and twice 30803.4 → (96 + 6571.1 + 6648.1)/62182.8 = 0.214130.
    expect(two.rate.ccPerThou).toBeCloseTo(0.21413, 5)
    expect(record([right(), asked()]).doubted).toBe(false)
    expect(record([right(), right(), right(), asked(), asked(), off()]).doubted).toBe(true)
    expect(record([asked(), asked(), right(), right(), right()]).doubted).toBe(false)
  })

  it('a first pass goes the whole way again once a cut made after the doubt agrees', () => {
    expect(record([asked(), asked(0.1), off()])).toMatchObject({ doubted: true, halfFirstPass: false })
    const none = record([asked(), asked(0.1), cut(70, 52, 40)])
    expect(none).toMatchObject({ doubted: true, halfFirstPass: true })
  })

  it('what the owner left out does not count for the doubt', () => {
    const out = { ...off(), ruling: 'leave-out' as const }
    expect(record([out, asked()]).doubted).toBe(false)
    expect(record([out, { ...out, questioned: true }])).toMatchObject({ doubted: false, rate: { cuts: 0 } })
  })
})
