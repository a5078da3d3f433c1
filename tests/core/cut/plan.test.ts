import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makePlan, type PlanAnswer, type PlanInput } from '../../../lib/core/cut/plan'
import { must } from '../../../lib/core/errors'

const limits = {
  angleCautionDeg: 0.5,
  angleLimitDeg: 1,
  thicknessNewIn: null,
  thicknessLeastIn: null,
  classFlatOnly: false,
  classMinCc: null,
  classMaxCutIn: null,
} satisfies PlanInput['limits']

const head = { tag: 'T-0001', chambersCc: [64, 64.2, 63.8, 64], thicknessIn: null }

/** Six thou per cc, centre of the openings at 0.635 of 7 in: 64.0 cc on the mean. */
const base: PlanInput = {
  kind: 'flat',
  heads: [head],
  targetCc: 61,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0,
  thouPerCc: 6,
  centroidShare: 0.635,
  milledWidthIn: 7,
  split: { by: 'margin' },
  marginCc: 1,
  stopAtIn: null,
  limits,
}
const plan = (more: Partial<PlanInput> = {}): PlanAnswer => must(makePlan({ ...base, ...more }))
const refusal = (more: Partial<PlanInput>) => {
  const answer = makePlan({ ...base, ...more })
  return answer.ok ? { code: 'none', message: '' } : answer.refusal
}
const within = (more: Partial<PlanInput['limits']>) => ({ limits: { ...limits, ...more } })

describe('depths', () => {
  it('3 cc at 6.0 thou per cc: 18 thou flat [common practice]', () => {
    const { flatIn, angleIn, angleDeg, deepestIn, removesCc } = plan()
    expect(flatIn).toBeCloseTo(0.018, 12)
    expect([angleIn, angleDeg]).toEqual([0, 0])
    expect(deepestIn).toBeCloseTo(0.018, 12)
    expect(removesCc).toBeCloseTo(3, 12)
  })

  it('10 cc with 20 thou flat: 63 thou at the edge [common practice]; 0.5156° by hand: atan(0.062992/7)', () => {
    const { angleIn, angleDeg, depthAtCentroidIn } = plan({
      kind: 'angle-flat',
      targetCc: 54,
      split: { by: 'flat', flatIn: 0.02 },
    })
    expect(angleIn).toBeCloseTo(0.063, 4)
    expect(depthAtCentroidIn).toBeCloseTo(0.06, 12)
    expect(angleDeg).toBeCloseTo(0.5156, 4)
  })

  it('the same cut from its angle part, and from its degrees: 20 thou flat', () => {
    const more = { kind: 'angle-flat', targetCc: 54 } as const
    expect(plan({ ...more, split: { by: 'angle', angleIn: 0.04 / 0.635 } }).flatIn).toBeCloseTo(0.02, 12)
    const deg = (Math.atan(0.04 / 0.635 / 7) * 180) / Math.PI
    expect(plan({ ...more, split: { by: 'degrees', angleDeg: deg } }).flatIn).toBeCloseTo(0.02, 12)
  })

  it('a pure angle cut, and one that leaves a vendor’s margin of 1 cc: 6 thou flat, 54/0.635 at the edge', () => {
    expect(plan({ kind: 'angle', targetCc: 54 }).angleIn).toBeCloseTo(0.06 / 0.635, 12)
    const left = plan({ kind: 'angle-flat', targetCc: 54, split: { by: 'margin' } })
    expect(left.flatIn).toBeCloseTo(0.006, 12)
    expect(left.angleIn).toBeCloseTo(0.054 / 0.635, 12)
  })

  it('a flat cut needs neither centre nor width; an angle cut’s degrees need the width', () => {
    expect(plan({ centroidShare: null, milledWidthIn: null }).flatIn).toBeCloseTo(0.018, 12)
    const angle = plan({ kind: 'angle', milledWidthIn: null })
    expect(angle.angleDeg).toBeNull()
    expect(angle.needs).toContain('milledWidthIn')
  })

  it('any plan to size takes its depth at the centroid and lands the mean on the target', () => {
    const input = fc.record({
      kind: fc.constantFrom('flat', 'angle', 'angle-flat'),
      takeCc: fc.double({ min: 0.1, max: 12, noNaN: true }),
      seatWorkGivesCc: fc.double({ min: 0, max: 2, noNaN: true }),
      thouPerCc: fc.double({ min: 4, max: 9, noNaN: true }),
      centroidShare: fc.double({ min: 0.4, max: 0.8, noNaN: true }),
      flatPart: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    fc.assert(
      fc.property(input, ({ kind, takeCc, thouPerCc, centroidShare, seatWorkGivesCc, flatPart }) => {
        const flatIn = (flatPart * takeCc * thouPerCc) / 1000
        const answer = plan({
          ...{ thouPerCc, centroidShare, seatWorkGivesCc },
          kind: kind as PlanInput['kind'],
          targetCc: 64 - takeCc + seatWorkGivesCc,
          split: { by: 'flat', flatIn },
          ...within({ angleLimitDeg: 5 }),
        })
        const atCentroid = answer.flatIn + answer.angleIn * centroidShare
        expect(atCentroid).toBeCloseTo((takeCc * thouPerCc) / 1000, 9)
        expect(answer.finishedCc).toBeCloseTo(64 - takeCc + seatWorkGivesCc, 9)
        expect(answer.afterCutCc).toBeCloseTo(64 - takeCc, 9)
        expect(answer.flatIn).toBeGreaterThanOrEqual(0)
        expect(answer.deepestIn).toBeCloseTo(answer.flatIn + answer.angleIn, 12)
      }),
    )
  })

  it('a smaller target is a deeper cut', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 63, noNaN: true }), (targetCc) => {
        expect(plan({ targetCc }).flatIn).toBeGreaterThan(plan({ targetCc: targetCc + 0.5 }).flatIn)
      }),
    )
  })
})

describe('volumes', () => {
  it('aims below the target by what the seat work will add', () => {
    const { aimCc, afterCutCc, finishedCc, flatIn } = plan({ seatWorkGivesCc: 0.87 })
    expect(aimCc).toBeCloseTo(60.13, 12)
    expect(afterCutCc).toBeCloseTo(60.13, 12)
    expect(finishedCc).toBeCloseTo(61, 12)
    expect(flatIn).toBeCloseTo(3.87 * 0.006, 12)
  })

  it('one depth for a pair, from all chambers of both heads', () => {
    const pair = plan({ heads: [head, { ...head, tag: 'T-0002', chambersCc: [64.4, 64.6, 64.4, 64.6] }] })
    expect(pair.presentMeanCc).toBeCloseTo(64.25, 12)
    expect(pair.flatIn).toBeCloseTo(3.25 * 0.006, 12)
    expect(pair.heads.map(({ chambersFinishedCc }) => chambersFinishedCc[0])).toEqual([
      expect.closeTo(60.75, 9),
      expect.closeTo(61.15, 9),
    ])
    expect(pair.outOfTolerance).toEqual([])
    expect(pair.governing).toContain('mean of 8 chambers')
  })

  it('a chamber exactly on the tolerance is in it', () => {
    expect(plan({ heads: [{ ...head, chambersCc: [63.5, 64.5] }] }).outOfTolerance).toEqual([])
  })

  it('says when cutting alone cannot do it, and how deep for the largest', () => {
    const uneven = plan({ heads: [{ ...head, chambersCc: [63, 64, 64, 65] }] })
    expect(uneven.outOfTolerance).toMatchObject([
      { tag: 'T-0001', chamber: 1, overCc: -1 },
      { tag: 'T-0001', chamber: 4, overCc: 1 },
    ])
    expect(uneven.cautions).toMatchObject([
      {
        code: 'uneven',
        targetCc: 61,
        chambers: [
          { chamber: 1, finishedCc: 60 },
          { chamber: 4, finishedCc: 62 },
        ],
      },
    ])
    // 65 to 61 is 4 cc: 24 thou.
    expect(uneven.governing).toContain('24 thou')
    // With half a cc of seat work to come the largest goes to 60.5: 4.5 cc at 6 thou per cc.
    const sunk = plan({ heads: [{ ...head, chambersCc: [63, 64, 64, 65] }], seatWorkGivesCc: 0.5 })
    expect(sunk.governing).toContain('27 thou')
  })

  it('equalising: the largest goes to the target, the rest are to be opened', () => {
    const equal = plan({ equalise: true, heads: [{ ...head, chambersCc: [63, 64, 64, 65] }] })
    expect(equal.flatIn).toBeCloseTo(0.024, 12)
    expect(equal.outOfTolerance.map(({ chamber, overCc }) => [chamber, overCc])).toEqual([
      [1, expect.closeTo(-2, 9)],
      [2, expect.closeTo(-1, 9)],
      [3, expect.closeTo(-1, 9)],
    ])
    expect(equal.governing).toContain('chamber 1 of T-0001 by 2.0 cc')
  })

  it('a nominal figure tells no chamber from another, and says so', () => {
    const nominal = plan({ presentNominal: true, heads: [{ ...head, chambersCc: [64] }] })
    expect(nominal.flatIn).toBeCloseTo(0.018, 12)
    expect(nominal.governing).toContain('nominal')
  })
})

describe('no cut and clean-up', () => {
  it('no cut changes nothing but what the seat work adds, whatever is known', () => {
    const none = plan({ kind: 'none', targetCc: null, thouPerCc: null, seatWorkGivesCc: 0.5 })
    expect(none).toMatchObject({
      flatIn: 0,
      angleIn: 0,
      deepestIn: 0,
      removesCc: 0,
      aimCc: null,
      cautions: [],
    })
    expect(none.afterCutCc).toBeCloseTo(64, 12)
    expect(none.finishedCc).toBeCloseTo(64.5, 12)
  })

  it('a clean-up goes to its limit and no target; 6 thou take 1 cc', () => {
    const cleanUp = plan({ kind: 'clean-up', targetCc: null, stopAtIn: 0.006 })
    expect(cleanUp).toMatchObject({ flatIn: 0.006, angleIn: 0, aimCc: null })
    expect(cleanUp.afterCutCc).toBeCloseTo(63, 12)
  })

  it('a clean-up stands without cc or rate, and says what it needs for more', () => {
    const bare = plan({
      kind: 'clean-up',
      targetCc: null,
      stopAtIn: 0.004,
      thouPerCc: null,
      heads: [{ ...head, chambersCc: [] }],
    })
    expect(bare).toMatchObject({ afterCutCc: null, finishedCc: null, presentMeanCc: null, removesCc: null })
    expect(bare.needs).toEqual(expect.arrayContaining(['presentCc', 'thouPerCc']))
  })
})

describe('limits, from new', () => {
  const thick = { ...head, thicknessIn: 4.48 }

  it('a mild cut brings no caution', () => {
    const mild = plan({ targetCc: 63.3, ...within({ thicknessLeastIn: 4.4 }), heads: [thick] })
    expect(mild.cautions).toEqual([])
    expect(mild.heads[0]?.thicknessLeftIn).toBeCloseTo(4.48 - 0.0042, 12)
  })

  it('counts metal gone since new by the thickness, else as recorded, else not at all', () => {
    const since = (more: Partial<PlanInput>) => plan(more).totalRemovedIn
    expect(since({ heads: [thick], ...within({ thicknessNewIn: 4.5 }) })).toBeCloseTo(0.038, 12)
    expect(since({ heads: [{ ...head, removedBeforeIn: 0.01 }] })).toBeCloseTo(0.028, 12)
    expect(since({})).toBeNull()
    expect(plan().needs).toContain('thicknessNewIn')
    const pair = [
      { ...head, removedBeforeIn: 0.01 },
      { ...head, removedBeforeIn: 0.03 },
    ]
    expect(since({ heads: pair })).toBeCloseTo(0.048, 12)
    expect(since({ heads: [...pair, head] })).toBeNull()
  })

  it('cautions above half a degree, never at it', () => {
    const angleIn = 7 * Math.tan((0.5 * Math.PI) / 180)
    const at = (more: number) =>
      ({ kind: 'angle-flat', targetCc: 52, split: { by: 'angle', angleIn: angleIn + more } }) as const
    expect(plan(at(0)).cautions).toEqual([])
    expect(plan(at(0.001)).cautions).toMatchObject([{ code: 'steep' }])
  })

  it('cannot hold a thickness against its least that nobody measured, and says so', () => {
    const unknown = plan(within({ thicknessLeastIn: 4.4 }))
    expect(unknown.cautions).toMatchObject([{ code: 'thickness-not-known', tags: ['T-0001'] }])
    expect(unknown.needs).toContain('thicknessIn')
  })

  it.each<[string, Partial<PlanInput>, string]>([
    ['over the largest angle', { kind: 'angle', targetCc: 50 }, 'angleLimitDeg'],
    ['an angle where the class wants flat', { kind: 'angle', ...within({ classFlatOnly: true }) }, 'classFlatOnly'],
    ['deeper than the class', within({ classMaxCutIn: 0.015 }), 'classMaxCutIn'],
    [
      'deeper than the class with what went before',
      { heads: [{ ...head, removedBeforeIn: 0.01 }], ...within({ classMaxCutIn: 0.02 }) },
      'classMaxCutIn',
    ],
    ['too thin', { heads: [thick], ...within({ thicknessLeastIn: 4.47 }) }, 'thicknessLeastIn'],
    ['the smallest under the class', within({ classMinCc: 61 }), 'classMinCc'],
  ])('%s: unreachable, by name', (_, more, field) => {
    expect(refusal(more)).toMatchObject({ code: 'unreachable', fields: { [field]: expect.any(String) } })
  })

  it('all broken limits in one answer', () => {
    const { fields } = refusal({
      heads: [thick],
      ...within({ thicknessLeastIn: 4.47, classMaxCutIn: 0.01 }),
    }) as {
      fields?: object
    }
    expect(Object.keys(fields ?? {}).sort()).toEqual(['classMaxCutIn', 'thicknessLeastIn'])
  })

  it('exactly on each limit is inside it', () => {
    const edge = { thicknessLeastIn: 4.462, classMaxCutIn: 0.018, classMinCc: 60.8 }
    expect(plan({ heads: [thick], ...within(edge) }).flatIn).toBeCloseTo(0.018, 12)
  })
})

describe('what cannot be', () => {
  it('a target above what is there wants the chamber opened', () => {
    expect(refusal({ targetCc: 66 })).toMatchObject({
      code: 'unreachable',
      message: expect.stringContaining('Open the chamber'),
    })
    expect(refusal({ targetCc: 64.3 }).message).toContain('nothing to cut')
    // 64 cc, and the seat work will add 0.5 of its own: 0.3 cc may still go.
    expect(plan({ targetCc: 64.2, seatWorkGivesCc: 0.5 }).removesCc).toBeCloseTo(0.3, 9)
  })

  it.each<[string, Partial<PlanInput>, string]>([
    ['no target', { targetCc: null }, 'targetCc'],
    ['no cc', { heads: [{ ...head, chambersCc: [] }] }, 'presentCc'],
    ['one head of a pair without cc', { heads: [head, { ...head, tag: 'T-0002', chambersCc: [] }] }, 'presentCc'],
    ['no rate', { thouPerCc: null }, 'thouPerCc'],
    ['no centre for an angle', { kind: 'angle', centroidShare: null }, 'centroidShare'],
    [
      'no width for degrees',
      { kind: 'angle-flat', milledWidthIn: null, split: { by: 'degrees', angleDeg: 0.3 } },
      'milledWidthIn',
    ],
    ['no limit for a clean-up', { kind: 'clean-up' }, 'stopAtIn'],
    ['no head', { heads: [] }, 'heads'],
  ])('%s: needs it', (_, more, need) => {
    expect(refusal(more)).toMatchObject({ code: 'missing', needs: [need] })
  })

  it.each<[string, Partial<PlanInput>, string]>([
    ['a flat part that takes it all', { kind: 'angle-flat', split: { by: 'flat', flatIn: 0.019 } }, 'unreachable'],
    ['an angle part that takes more', { kind: 'angle-flat', split: { by: 'angle', angleIn: 0.03 } }, 'unreachable'],
    ['a margin worth more than the cut', { kind: 'angle-flat', marginCc: 4 }, 'unreachable'],
    ['half an inch', { targetCc: 1, thouPerCc: 20 }, 'unreachable'],
    ['half an inch at the edge', { kind: 'angle', targetCc: 1, thouPerCc: 6 }, 'out-of-range'],
    ['a flat part below nothing', { kind: 'angle-flat', split: { by: 'flat', flatIn: -0.001 } }, 'out-of-range'],
    ['a flat part that is no number', { kind: 'angle-flat', split: { by: 'flat', flatIn: NaN } }, 'out-of-range'],
    ['six degrees', { kind: 'angle-flat', split: { by: 'degrees', angleDeg: 6 } }, 'out-of-range'],
    ['a target of nothing', { targetCc: 0 }, 'out-of-range'],
    ['a target that is no number', { targetCc: NaN }, 'out-of-range'],
    ['a tolerance below nothing', { toleranceCc: -0.1 }, 'out-of-range'],
    ['seat work that takes away', { seatWorkGivesCc: -1 }, 'out-of-range'],
    ['a rate of nothing', { thouPerCc: 0 }, 'out-of-range'],
    ['a centre off the deck', { centroidShare: 1.1 }, 'out-of-range'],
    ['no such width', { milledWidthIn: 30 }, 'out-of-range'],
    ['a chamber below nothing', { heads: [{ ...head, chambersCc: [64, -1] }] }, 'out-of-range'],
    ['an endless chamber', { heads: [{ ...head, chambersCc: [Infinity] }] }, 'out-of-range'],
    ['a head thinner than paper', { heads: [{ ...head, thicknessIn: 0.01 }] }, 'out-of-range'],
    ['a stop-at limit of more than a tenth of an inch, whatever the kind', { stopAtIn: 0.101 }, 'out-of-range'],
    ['a clean-up of more than a tenth of an inch', { kind: 'clean-up', stopAtIn: 0.101 }, 'out-of-range'],
    [
      // 10 cc at 40 thou per cc are 0.400 at the centre: 0.200 flat and 0.200/0.635 = 0.315 at the edge.
      'more than half an inch at the deep edge',
      { kind: 'angle-flat', targetCc: 54, thouPerCc: 40, split: { by: 'flat', flatIn: 0.2 } },
      'out-of-range',
    ],
    ['more than a chamber holds', { kind: 'clean-up', stopAtIn: 0.1, thouPerCc: 1 }, 'out-of-range'],
  ])('refuses %s', (_, more, code) => {
    expect(refusal(more).code).toBe(code)
  })

  it('any figures at all give finite answers or a refusal', () => {
    const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 100 }))
    const maybe = fc.option(any)
    const input = fc.record({
      kind: fc.constantFrom<PlanInput['kind']>('none', 'clean-up', 'flat', 'angle', 'angle-flat'),
      heads: fc.array(
        fc.record({
          tag: fc.constant('T-0001'),
          chambersCc: fc.array(any, { maxLength: 4 }),
          thicknessIn: maybe,
        }),
        { maxLength: 2 },
      ),
      targetCc: maybe,
      toleranceCc: any,
      seatWorkGivesCc: any,
      thouPerCc: maybe,
      centroidShare: maybe,
      milledWidthIn: maybe,
      split: any.map((flatIn) => ({ by: 'flat', flatIn }) as const),
      marginCc: any,
      stopAtIn: maybe,
      equalise: fc.boolean(),
    })
    fc.assert(
      fc.property(input, (asked) => {
        const answer = makePlan({ ...asked, limits })
        const text = JSON.stringify(answer, (_, value: unknown) =>
          typeof value === 'number' && !Number.isFinite(value) ? 'NOT FINITE' : value,
        )
        expect(text).not.toContain('NOT FINITE')
        if (answer.ok) expect(text).not.toMatch(/NaN|Infinity|undefined/)
      }),
      { numRuns: 2000 },
    )
  })
})
