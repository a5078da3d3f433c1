import { describe, expect, it } from 'vitest'
import { benchFigures, type BenchInput } from '@/lib/core/at-bench/bench-figures'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { consequences } from '@/lib/core/options/consequences'
import { isMeasurable } from '@/lib/core/units/least-measured'
import { benchLine } from '@/lib/words/at-bench'
import { rad } from '../clearance/vectors'

const neverCut = { tag: 'T-0001', chambersCc: [], thicknessIn: null, removedBeforeIn: 0 }
const V: EngineFacts = { layout: 'v', bankAngleDeg: 90, camInHead: false }
const casting: CastingFacts = {
  milledWidthIn: 7,
  intakeFaceDeg: 0,
  portXIn: 0.5,
  portZIn: 2.5,
  dowelXIn: 1,
  faceHeightIn: 3,
  spotFaceIn: 0.875,
  boltHoleIn: 0.47,
  boltIn: 0.4375,
  boltHoleLengthIn: 3.5,
  threadLeftIn: 0.12,
  dowelDepthIn: 0.05,
  rockerXIn: 3,
  rockerZIn: 5,
  intakeTopCutIn: 2.06,
}

function input(cut: { flatIn: number; angleIn: number }, more: Partial<BenchInput> = {}): BenchInput {
  return {
    follows: consequences({
      cut: { ...cut, milledWidthIn: 7 },
      casting,
      engine: V,
      deepEdge: 'exhaust',
      beforeCc: 64,
      finishedCc: 61,
      sinkIn: 0,
      heads: [neverCut],
    }),
    cut,
    ordered: null,
    deck: { deepEdge: 'exhaust', milledWidthIn: 7, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
    spotFaceAcrossIn: 0.875,
    holes: [],
    cornersBefore: { 'intake-1': 4.5, 'exhaust-1': 4.5 },
    targetCc: 61,
    toleranceCc: 0.5,
    straightIn: { across: 0.002, along: 0.004 },
    finishAsked: '',
    ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
    circleIn: { intake: 2.06, exhaust: null },
    ...more,
  }
}

const flat = { flatIn: 0.03, angleIn: 0 }
const degree = { flatIn: 0, angleIn: 7 * Math.tan(rad(1)) }
const words = (...[stepId, of]: Parameters<typeof benchFigures>) =>
  benchFigures(stepId, of).map((figure) => Object.values(benchLine(figure)).filter(Boolean).join(' | '))

describe('the intake side', () => {
  it('of a flat cut comes off evenly: a 90° V with a square face takes the cut itself, and 1.414 of it at the rails', () => {
    // Multipliers for 90° and face 0: side 1.000, rails 1.414 (30 thou → 30.0 and 42.4).
    expect(words('intake', input(flat))).toEqual([
      'Cut off the intake face | 30.0 thou | leave, port match or cut: choose below',
      'Cut off each manifold end rail | 42.4 thou | so that the manifold comes down with the ports',
    ])
  })

  it('of an angle cut is a wedge: both ends are named, and no depth is below nothing', () => {
    const figures = benchFigures('intake', input(degree))
    const ends = figures.flatMap((figure) => (figure.code === 'face-cut' ? [figure] : []))
    expect(ends.map(({ end }) => end)).toEqual(['deck', 'cover'])
    expect(ends.every(({ valueIn }) => valueIn >= 0)).toBe(true)
    // The face is 3 in high: the two ends differ by 3·tan 1° = 52.4 thou, most at the deck end.
    expect((ends[0]?.valueIn ?? 0) - (ends[1]?.valueIn ?? 0)).toBeCloseTo(3 * Math.tan(rad(1)), 9)
  })

  it('says what it lacks', () => {
    const unknown = { ...input(flat), follows: { ...input(flat).follows } }
    const lacking = consequences({
      cut: { ...flat, milledWidthIn: 7 },
      casting: {},
      engine: { layout: 'unknown', camInHead: null },
      deepEdge: 'exhaust',
      beforeCc: null,
      finishedCc: null,
      sinkIn: 0,
      heads: [neverCut],
    })
    expect(words('intake', { ...unknown, follows: lacking })).toEqual([
      'Intake side | not known | needs the engine’s layout, inline or V',
    ])
  })
})

describe('the bolt bench', () => {
  it('cuts the seat across its diameter on the shallow side: 0.875 in at 1° is 15.3 thou', () => {
    expect(words('bolt-seats', input(degree))).toEqual([
      'Cut each bolt seat, high side | 15.3 thou | at the intake edge of a 0.875 in spot face, nothing at the other',
    ])
  })

  it('leaves what no shop can measure: 0.4 thou over 7 in is 0.05 thou across a seat of 0.875 in', () => {
    // 0.875·0.0004/7 = 0.00005; over a hole of 3.5 in with 0.0005 in of play each way the lean is 3.5·0.0004/7 = 0.0002.
    const scatter = { flatIn: 0.02, angleIn: 0.0004 }
    expect(words('bolt-seats', input(scatter))).toEqual(['Bolt seats | leave them | they lean less than 0.5 thou'])
    // A gap is as large as a cut.
    expect([0.0004, -0.0004, 0.0005, -0.0005].map(isMeasurable)).toEqual([false, false, true, true])
    const holes = [
      { label: 'A', slotIn: 0.0004 },
      { label: 'B', slotIn: 0.0005 },
    ]
    expect(words('bolt-fit', input(degree, { holes }))).toEqual([
      'Slot, hole B | 0.5 thou | at the top, toward the intake edge',
      'No slot | hole A | the bolts pass as the holes are',
    ])
  })

  it('says of each hole slot or no slot, never both', () => {
    const holes = [
      { label: 'L1', slotIn: 0.0298 },
      { label: 'S1', slotIn: 0 },
      { label: 'L2', slotIn: 0.0298 },
    ]
    expect(words('bolt-fit', input(degree, { holes }))).toEqual([
      'Slot, holes L1, L2 | 29.8 thou | at the top, toward the intake edge',
      'No slot | hole S1 | the bolts pass as the holes are',
    ])
  })

  it('counts the thread and the dowel’s depth after all cuts', () => {
    // 0.120 − 0.030 = 90 thou of thread; 0.050 − 0.030 = 20 thou of dowel hole.
    expect(words('bolt-reach', input(flat))[0]).toContain('Thread left in a blind hole | 90.0 thou')
    expect(words('dowel-fit', input(flat))[0]).toContain('Depth left in the dowel holes | 20.0 thou')
    // 0.060 in gone is more than the 0.050 there is: 10.0 thou too little.
    expect(words('dowel-fit', input({ flatIn: 0.06, angleIn: 0 }))[0]).toContain(
      '10.0 thou too little | the dowels bottom: stop, tell the machinist in charge',
    )
  })
})

describe('the measuring bench and assembly', () => {
  it('shows target, corners and straightness at the finished check', () => {
    expect(words('finished', input(flat))).toEqual([
      'Target, each chamber | 61.0 cc | ± 0.5 cc',
      'Corner intake end 1 | 4.4700 in | expected',
      'Corner exhaust end 1 | 4.4700 in | expected',
      'Straightness limit | 0.0020 in across | 0.0040 in along',
    ])
  })

  it('shows at an arrival what the order asked: corners and marks', () => {
    const ordered = { flatIn: 0.02, angleIn: 0.063 }
    const said = words('arrival-figures', input(degree, { ordered }))
    expect(said.at(-1)).toBe('Marks expected | 20 int / 83 exh | thou at each edge')
    // cos atan(0.063/7) = 1/√(1 + 0.000081) = 0.9999595; (4.5 − 0.083)·0.9999595 = 4.41682.
    expect(said).toContain('Corner exhaust end 1 | 4.4168 in | expected')
  })

  it('names the circle that the seat depth is measured to', () => {
    expect(words('seat-before', input(flat))).toEqual([
      'Measure to the intake top-cut circle | 2.060 in across | from the deck, where the circle is nearest to it',
    ])
  })

  it('says how far the rocker stand comes down, and the pushrod with it', () => {
    expect(words('rocker', input(flat)).map((one) => one.split(' | ')[1])).toEqual(['30.0 thou', '30.0 thou'])
  })

  it('has nothing for a step without a figure of its own', () => {
    expect(benchFigures('wash-in', input(flat))).toEqual([])
  })
})
