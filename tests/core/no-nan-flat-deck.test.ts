import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makePlan, type PlanInput } from '@/lib/core/cut/plan'
import { partsToThickness } from '@/lib/core/cut/plan-thickness'
import { flatDeckPlan } from '@/lib/core/flat-deck/plan-of-heads'
import { castingFigures, type CastingFacts } from '@/lib/core/casting/figures'
import { flatDeckAfter } from '@/lib/core/flat-deck/after-cut'
import { deepestFlatCut } from '@/lib/core/flat-deck/deepest-cut'
import { flatDeckLimitsOf, judgeByLimits } from '@/lib/core/flat-deck/maker-limits'
import { flatDeckFactsOf, pastMaker } from '@/lib/core/flat-deck/past-maker'
import { flatDeckVolumeAfterCc, pocketsCc } from '@/lib/core/flat-deck/pockets'
import { protrusionAfter } from '@/lib/core/flat-deck/protrusion'
import { recessionAfter, sinkForRecession } from '@/lib/core/flat-deck/recession'
import { depthToThickness } from '@/lib/core/flat-deck/thickness'
import { quantities } from '@/lib/core/units/quantities'
import { maybe, near, perhaps, plain } from './any-figure'
import { holds } from './holds'

const record = fc.record(
  Object.fromEntries(
    Object.entries(castingFigures).map(([key, { quantity }]) => {
      const { least, most } = quantities[quantity]
      return [key, near(least, most)]
    }),
  ),
  { requiredKeys: [] },
) as Arbitrary<CastingFacts>
const recession = near(-0.25, 0.5)
const valves = fc.dictionary(fc.constantFrom('1-intake', '1-intake-2', '1-exhaust', '2-exhaust'), recession)
const injectors = fc.dictionary(fc.constantFrom('1', '2'), recession)
const now = fc.record({
  recessionIn: valves,
  protrusionIn: injectors,
  chamberCc: fc.dictionary(fc.constantFrom('1', '2'), near(0, 400)),
})
const leaning = fc.record({ valveAngleDeg: perhaps(near(-60, 60)), cantDeg: perhaps(near(-60, 60)) })
const cut = fc.record({
  flatIn: near(0, 0.5),
  angleIn: fc.oneof(fc.constant(0), near(0, 0.5)),
  milledWidthIn: perhaps(near(1, 20)),
})
const pocket = fc.record({ diameterIn: perhaps(near(0.3, 5)), recessionIn: near(-0.75, 0.75) })
const pockets = fc.array(pocket, { maxLength: 6 })

describe('flat decks', () => {
  holds(recessionAfter, [perhaps(recession), near(0, 0.5), near(0, 0.25), leaning], 1000)
  holds(sinkForRecession, [near(-0.75, 0.5), recession, leaning], 1000)
  holds(protrusionAfter, [perhaps(recession), near(0, 0.5)])
  holds(pocketsCc, [pockets])
  holds(flatDeckVolumeAfterCc, [maybe(near(0, 400)), pockets, pockets])
  holds(depthToThickness, [perhaps(near(0.3, 12)), perhaps(near(0.3, 12))])
  holds(judgeByLimits, [plain(-1, 1), fc.record({ leastIn: maybe(plain(-1, 1)), mostIn: maybe(plain(-1, 1)) })])
  holds(flatDeckLimitsOf, [record])
  holds(flatDeckFactsOf, [record, near(1, 12)])
  holds(pastMaker, [
    fc.record({
      kind: fc.constantFrom('recession' as const, 'protrusion' as const, 'thickness' as const, 'cc' as const),
      point: fc.constantFrom('1-intake', '2-exhaust-2', '1', 'intake-1', ''),
      value: maybe(plain(-1, 5)),
    }),
    record.map(flatDeckLimitsOf),
  ])
  holds(flatDeckAfter, [now, record, cut, near(0, 0.25)], 600)
  holds(deepestFlatCut, [now, record, maybe(near(0.3, 12))], 600)
})

describe('plans of flat decks', () => {
  const head = fc.record({
    tag: fc.constant('T-0001'),
    chambersCc: fc.constant([]),
    thicknessIn: maybe(near(0.3, 12)),
    flatDeck: now,
  })
  const limits = {
    ...{ angleCautionDeg: 0.5, angleLimitDeg: 1, thicknessLeastIn: null, land: null },
    ...{ classFlatOnly: false, classMinCc: null, classMaxCutIn: null },
  }
  const plan: Arbitrary<PlanInput> = fc.record({
    kind: fc.constantFrom('none' as const, 'clean-up' as const, 'flat' as const, 'angle' as const),
    heads: fc.array(head, { maxLength: 3 }),
    targetCc: maybe(near(1, 400)),
    toleranceCc: fc.constant(0.5),
    seatWorkGivesCc: near(0, 20),
    thouPerCc: maybe(near(0.5, 200)),
    centroidShare: maybe(near(0, 1)),
    milledWidthIn: maybe(near(1, 20)),
    split: fc.constant({ by: 'margin' as const }),
    marginCc: near(0, 50),
    stopAtIn: maybe(near(0.0005, 0.1)),
    limits: fc.constant(limits),
    flatDeck: fc.record({ wantedThicknessIn: maybe(near(0.3, 12)) }),
  })
  holds(partsToThickness, [plan], 600)
  holds(makePlan, [plan], 600)
  holds(flatDeckPlan, [
    fc.array(head, { maxLength: 3 }),
    fc.record({ flatIn: near(0, 0.5), angleIn: near(0, 0.5) }),
    record,
    near(0, 0.25),
    maybe(near(0.3, 12)),
  ])
})

describe('what is not known is refused by name', () => {
  it('a valve that was not read', () => {
    expect(recessionAfter(null, 0.012, 0, { valveAngleDeg: 0 })).toMatchObject({
      ok: false,
      refusal: { code: 'missing', needs: ['beforeIn'] },
    })
  })

  it('the angle, only where the valve is sunk', () => {
    expect(recessionAfter(0.04, 0.012, 0.01, { valveAngleDeg: undefined })).toMatchObject({
      ok: false,
      refusal: { code: 'missing', needs: ['valveAngleDeg'] },
    })
    expect(recessionAfter(0.04, 0.012, 0, { valveAngleDeg: undefined })).toMatchObject({ ok: true })
  })

  it('the place of the valve, only where the cut leans', () => {
    const head = { recessionIn: { '1-intake': 0.04 }, protrusionIn: {} }
    expect(flatDeckAfter(head, {}, { flatIn: 0.01, angleIn: 0.007, milledWidthIn: 7 }, 0)).toMatchObject({
      ok: false,
      refusal: { code: 'missing', needs: ['intakeValveXIn'] },
    })
    expect(flatDeckAfter(head, {}, { flatIn: 0.01, angleIn: 0, milledWidthIn: null }, 0)).toMatchObject({ ok: true })
  })

  it('no limit of the shop stands in for the engine maker’s', () => {
    const found = flatDeckAfter(
      { recessionIn: { '1-intake': -0.2 }, protrusionIn: { '1': 0.4 } },
      {},
      { flatIn: 0.01, angleIn: 0, milledWidthIn: null },
      0,
    )
    expect(found.ok && found.value.valves[0]?.judged).toEqual({ state: 'no-limit', byIn: 0 })
    expect(found.ok && found.value.injectors[0]?.judged).toEqual({ state: 'no-limit', byIn: 0 })
    expect(deepestFlatCut({ recessionIn: {}, protrusionIn: {} }, {}, null)).toMatchObject({
      ok: false,
      refusal: { code: 'missing' },
    })
  })

  it('a head that is thinner than wanted is not cut', () => {
    expect(depthToThickness(4.1, 4.12)).toMatchObject({ ok: false, refusal: { code: 'unreachable' } })
    expect(depthToThickness(4.12, 4.12)).toMatchObject({ ok: false, refusal: { code: 'unreachable' } })
    expect(depthToThickness(null, 4.12)).toMatchObject({ ok: false, refusal: { needs: ['thicknessIn'] } })
  })

  it('a seat is not sunk without end', () => {
    expect(sinkForRecession(-0.25, 0.1, { valveAngleDeg: 0 })).toMatchObject({
      ok: false,
      refusal: { code: 'unreachable' },
    })
  })

  it('nothing is a volume of a flat-deck head alone', () => {
    expect(quantities.chamberVolume.least).toBe(1)
    expect(quantities.flatDeckVolume.least).toBe(0)
  })
})
