import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { camAnswerOf, camAnswers, camFacts } from '@/lib/core/engine/cam-answer'
import { must, type Result } from '@/lib/core/errors'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { consequences } from '@/lib/core/options/consequences'
import type { ConsequencesInput } from '@/lib/core/options/consequences-input'
import { inputsOf } from '@/lib/core/options/inputs-of'
import { workedPlan } from '@/lib/core/options/plan-record-of'
import { chamberLines } from '@/lib/core/options/plan-words'
import { waysOf } from '@/lib/core/options/ways'
import { question, start } from './bench'
import { cutCautionText } from '@/lib/words/cut-cautions'

const neverCut = { tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0 }
const casting: CastingFacts = {
  milledWidthIn: 7,
  intakeFaceDeg: 39.85,
  portXIn: 0.2,
  portZIn: 2.1,
  dowelXIn: 0.8,
  faceHeightIn: 2.5,
  boltHoleIn: 0.5,
  boltIn: 0.4375,
  boltHoleLengthIn: 3.5,
}
const engine: EngineFacts = {
  layout: 'v',
  camInHead: null,
  bankAngleDeg: 90,
  boreIn: 4,
  strokeIn: 3.48,
  gasketBoreIn: 4.06,
  gasketThicknessIn: 0.04,
  deckClearanceIn: 0,
  pistonDishCc: 0,
}
const input = (more: Partial<ConsequencesInput> = {}): ConsequencesInput => ({
  cut: { flatIn: 0.03, angleIn: 0, milledWidthIn: 7 },
  casting,
  engine,
  deepEdge: 'exhaust',
  beforeCc: 64,
  finishedCc: 60,
  sinkIn: 0,
  heads: [neverCut],
  ...more,
})
const code = (found: Result<unknown>) => (found.ok ? 'ok' : found.refusal.code)
const linesOf = (of: ConsequencesInput) =>
  consequenceLines({
    cut: of.cut,
    deepEdge: of.deepEdge,
    follows: consequences(of),
    ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
    sealingMarginIn: 0.005,
  }).flatMap(({ lines }) => lines)
const lineOf = (of: ConsequencesInput, label: string) => linesOf(of).find((line) => line.label === label)

describe('figures that are plausible and wrong', () => {
  it('valves in the block lose nothing to their pistons: the cut takes it from valve to head', () => {
    const sideValve = input({ engine: { ...engine, valvesInBlock: true } })
    expect(code(consequences(sideValve).intake.pistonToValve)).toBe('out-of-range')
    const line = lineOf(sideValve, 'Piston to exhaust valve')
    expect(line).toMatchObject({ value: '', needs: [] })
    expect(line?.note).toContain('valve to head')
    expect(code(consequences(input()).intake.pistonToValve)).toBe('ok')
  })

  it('a chamber of 1 cc on a 716.6 cc cylinder would be 717 : 1: no engine', () => {
    const bare = { ...engine, gasketThicknessIn: 0 }
    const found = consequences(input({ engine: bare, finishedCc: 1 })).ratioAfter
    expect(code(found)).toBe('contradiction')
    // π/4·4²·3.48·16.387064 = 716.6; (716.6 + 1)/1.
    expect(found.ok ? '' : found.refusal.message).toContain('718 : 1')
  })

  it('a gasket bore under the bore stands into the cylinder', () => {
    expect(code(consequences(input({ engine: { ...engine, gasketBoreIn: 3.9 } })).ratioAfter)).toBe('contradiction')
    expect(code(consequences(input({ engine: { ...engine, gasketBoreIn: 4 } })).ratioAfter)).toBe('ok')
    // No gasket, no bore of it.
    const none = { ...engine, gasketBoreIn: 3.9, gasketThicknessIn: 0 }
    expect(code(consequences(input({ engine: none })).ratioAfter)).toBe('ok')
  })

  it('a bolt larger than its hole', () => {
    const wrong = input({ casting: { ...casting, boltIn: 0.5625 } })
    expect(code(consequences(wrong).boltHole)).toBe('contradiction')
  })

  it('239 thou off the face for a 30 thou cut, h + a 84.85°: cautioned, and both angles to be measured', () => {
    // s = d·sin 45°/cos 84.85° = 0.030·0.70711/0.08977 = 0.2363.
    const line = lineOf(input(), 'Off the intake side')
    expect(line?.value).toBe('236.3 thou')
    expect(line?.caution).toBe(true)
    // tan 84.85° = 11.09; a degree is 0.017453: 19 %.
    expect(line?.note).toContain('one degree of error changes this figure by 19 %')
    expect(lineOf(input({ casting: { ...casting, intakeFaceDeg: 10 } }), 'Off the intake side')?.caution).toBe(false)
  })

  it.each([
    ['a bolt of −0.4375', { boltIn: -0.4375 }, 'boltHole'],
    ['a hole of nothing', { boltHoleIn: 0 }, 'boltHole'],
    ['a face of 12 in', { faceHeightIn: 12 }, 'intakeSide'],
    ['a spot face of 5 in', { spotFaceIn: 5 }, 'spotFaceIn'],
  ] as const)('%s is impossible, for a flat cut too', (_, wrong, which) => {
    expect(code(consequences(input({ casting: { ...casting, ...wrong } }))[which])).toBe('out-of-range')
  })

  it('two notes of one line stand apart: a gap at the face and a gap under the rails', () => {
    const both = input({
      cut: { flatIn: 0, angleIn: 7 * Math.tan(Math.PI / 180), milledWidthIn: 7 },
      casting: { ...casting, intakeFaceDeg: 10, portZIn: 5 },
    })
    const { note = '', value = '' } = lineOf(both, 'Off the intake side') ?? {}
    expect(value).toMatch(/^gap of/)
    expect(note).toContain('cut only the wedge; the rails open: a gap under the manifold ends')
    expect(note.split('thicker gasket')).toHaveLength(2)
  })

  it('cam and valves are one question, and its answer comes back as it was given', () => {
    for (const answer of camAnswers) expect(camAnswerOf(camFacts(answer))).toBe(answer)
    expect(camFacts('side-valve')).toEqual({ camInHead: false, valvesInBlock: true })
  })
})

describe('a wall that leans', () => {
  const flat = { kind: 'flat', splitBy: 'margin', flatIn: null, angleIn: null, angleDeg: null, stopAtIn: null } as const
  const worked = (wallDraftDeg: number | undefined) => {
    const head = start({ casting: { ...start().casting, wallDraftDeg } })
    return must(workedPlan(inputsOf(question({ targetCc: 54, starts: [head] }), head), { ...flat, sinkIn: 0 })).record
  }

  it('10° over 60 thou takes 0.6 % less of 10 cc: 1 − (1 − x + x²/3), x = 0.060·tan 10°/1.7993', () => {
    const { wallDraft } = worked(10)
    const x = (0.06 * Math.tan(Math.PI / 18)) / Math.sqrt(10.1706 / Math.PI)
    expect(wallDraft?.lessCc).toBeCloseTo(10 * (x - x ** 2 / 3), 3)
    const line = chamberLines(worked(10)).find(({ label }) => label === 'Wall draft')
    expect(line?.value).toBe('10.0°: 0.06 cc less taken')
    expect(chamberLines(worked(-10)).find(({ label }) => label === 'Wall draft')?.value).toContain('more taken')
  })

  it('a square wall, or one of which nothing is known, has no line', () => {
    for (const draft of [0, undefined]) expect(worked(draft).wallDraft).toBeNull()
  })
})

describe('the caution beside a Yes', () => {
  const unknown = [{ tag: 'the head', chambersCc: [64], thicknessIn: null, removedBeforeIn: null }]
  const cautions = (rateProven: boolean, thicknessLeastIn: number | undefined) => {
    const head = start({ heads: unknown, rateProven })
    const ways = waysOf(question({ starts: [{ ...head, casting: { ...head.casting, thicknessLeastIn } }] }))
    return (
      ways
        .find(({ kind }) => kind === 'flat')
        ?.cautions.map(cutCautionText)
        .join(' ') ?? ''
    )
  }

  it('a head of unknown thickness with a rate that no cut proves: measure it, and cut in two passes', () => {
    expect(cautions(false, undefined)).toContain('The thickness of the head is not known')
    expect(cautions(false, undefined)).toContain('cut in two passes')
  })

  it('a proven rate leaves the thickness alone, and only where something must stay', () => {
    expect(cautions(true, 4.3)).toContain('4.300 in must stay')
    expect(cautions(true, 4.3)).not.toContain('two passes')
    expect(cautions(true, undefined)).toBe('')
  })
})
