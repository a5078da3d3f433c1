import type { Refusal, Result } from '../errors'
import { knownFacts } from '../known-facts'
import type { Consequences } from '../options/consequences'
import { ports } from '../options/valve-consequences'
import type { FlatDeckLimits } from '../flat-deck/maker-limits'
import type { StepId } from '../route/step-ids'
import type { Corners, Deck } from '../straightness/corners-fit'
import type { BenchFigure, Edge, NeededBy } from './bench-figure'
import { factOf } from '../units/fact-of'
import { isMeasurable } from '../units/least-measured'
import { expectedCorners } from './expected-corners'

/** A hole by its name on record, and how long a slot it needs; 0: none. */
export type HoleSlot = { readonly label: string; readonly slotIn: number }

export type BenchInput = {
  /** What follows from the cut of the day: what was really cut once it was measured, else the plan. */
  readonly follows: Consequences
  readonly cut: { readonly flatIn: number; readonly angleIn: number }
  /** What an order asked of the cut, at the arrival of it; null elsewhere. */
  readonly ordered: { readonly flatIn: number; readonly angleIn: number } | null
  readonly deck: Deck
  readonly spotFaceAcrossIn: number | null
  readonly holes: readonly HoleSlot[]
  readonly cornersBefore: Corners
  readonly targetCc: number | null
  readonly toleranceCc: number
  readonly straightIn: { readonly across: number; readonly along: number }
  readonly finishAsked: string
  readonly ptvLeastIn: Readonly<Record<Edge, number>>
  readonly circleIn: Readonly<Record<Edge, number | null>>
  /** Of a flat-deck head; null or left out: a head with chambers. */
  readonly flatDeck?: FlatDeckLimits | null
}

type Figures = (input: BenchInput) => readonly BenchFigure[]

/**
 * The figures that one step of a head needs, from the plan of the day and what was really cut.
 *
 * @param input as the consequences give them: inches, cc; what they lack is said as a need
 * @returns nothing for a step that has no figure of its own
 *
 * Example: 1° over 7 in, spot face of 0.875 in → "spot-face" 0.0153 in at the bolt seats.
 * Derived: each figure as the function that computes it says.
 */
export const benchFigures = (stepId: StepId, input: BenchInput): readonly BenchFigure[] => table[stepId]?.(input) ?? []

const table: Readonly<Partial<Record<StepId, Figures>>> = {
  intake: intakeFigures,
  'bolt-seats': spotFace,
  'bolt-fit': slots,
  'bolt-reach': ({ follows }) =>
    known(follows.boltReach, 'bolt-reach', ({ leftIn }) => [{ code: 'thread-left', valueIn: leftIn, minimumIn: 0 }]),
  'dowel-fit': ({ follows }) =>
    known(follows.dowelFit, 'dowel-fit', ({ leftIn }) => [{ code: 'dowel-left', valueIn: leftIn, minimumIn: 0 }]),
  'seat-before': seatCircles,
  'seat-after': seatCircles,
  rocker: ({ follows }) =>
    known(follows.rocker, 'rocker', ({ downIn, pushrodLongerIn }) => [
      { code: 'rocker-down', valueIn: downIn },
      { code: 'pushrod-longer', valueIn: pushrodLongerIn },
    ]),
  cam: ({ follows }) =>
    follows.cam === null
      ? []
      : known(follows.cam, 'cam', ({ downIn, slackIn }) => [
          { code: 'cam-down', valueIn: downIn },
          { code: 'cam-slack', valueIn: slackIn },
        ]),
  ptv: pistonFigures,
  finished: (input) => [
    ...makerLimits(input, true),
    ...(input.targetCc === null
      ? []
      : [{ code: 'target', valueCc: input.targetCc, toleranceCc: input.toleranceCc } as const]),
    ...cornersAfter(input, input.cut),
    { code: 'straight', acrossIn: input.straightIn.across, alongIn: input.straightIn.along },
    ...(input.finishAsked === '' ? [] : [{ code: 'finish', asked: input.finishAsked } as const]),
  ],
  'arrival-figures': (input) =>
    input.ordered === null ? [] : [...cornersAfter(input, input.ordered), ...marksAt(input.ordered, input.deck)],
}

function known<T>(found: Result<T>, of: NeededBy, say: (value: T) => readonly BenchFigure[]): readonly BenchFigure[] {
  return found.ok ? say(found.value) : [unknown(found.refusal, of)]
}

const unknown = ({ code, needs = [], message }: Refusal, of: NeededBy): BenchFigure =>
  code === 'missing' ? { code: 'needs', of, needs } : { code: 'cannot', of, why: message }

function intakeFigures({ follows }: BenchInput): readonly BenchFigure[] {
  return known(follows.intakeSide, 'intake-side', ({ sideIn, railsIn, face }) => {
    if (railsIn === null) return [{ code: 'port-drop', valueIn: sideIn }]
    const rails: BenchFigure = { code: railsIn < 0 ? 'rails-gap' : 'rails-cut', valueIn: Math.abs(railsIn) }
    if (face !== null) {
      return [
        { code: 'face-cut', end: 'deck', valueIn: face.deckEndIn },
        { code: 'face-cut', end: 'cover', valueIn: face.coverEndIn },
        ...(isMeasurable(face.gapIn) ? [{ code: 'face-gap', valueIn: face.gapIn } as const] : []),
        rails,
      ]
    }
    if (!isMeasurable(sideIn)) return [{ code: 'leave-face' }]
    if (sideIn < 0) return [{ code: 'face-gap', valueIn: -sideIn }, rails]
    return [{ code: 'face-cut', end: 'all', valueIn: sideIn }, rails]
  })
}

const shallowOf = ({ deepEdge }: Deck): Edge => (deepEdge === 'exhaust' ? 'intake' : 'exhaust')

/** The edge where the head stands high after all cuts, where bolt seats are cut and toward which holes are slotted. */
const highEdge = ({ follows, deck }: BenchInput): Edge =>
  follows.boltHole.ok && follows.boltHole.value.highSide === 'deep' ? deck.deepEdge : shallowOf(deck)

function spotFace(input: BenchInput): readonly BenchFigure[] {
  const { follows, spotFaceAcrossIn } = input
  return known(follows.spotFaceIn, 'spot-face', (valueIn) => [
    // The new deck leans, so the seat stands high where least was cut.
    isMeasurable(valueIn)
      ? { code: 'spot-face', valueIn, acrossIn: spotFaceAcrossIn ?? 0, highSide: highEdge(input) }
      : { code: 'leave-seats' },
  ])
}

/** Each hole has a slot or none; holes with slots of one length stand together. */
function slots(input: BenchInput): readonly BenchFigure[] {
  const { follows, holes } = input
  const toward = highEdge(input)
  if (holes.length === 0) {
    return known(follows.boltHole, 'bolt-fit', ({ slotIn }) => [
      isMeasurable(slotIn) ? { code: 'slot', holes: [], valueIn: slotIn, toward } : { code: 'no-slot', holes: [] },
    ])
  }
  const labels = (wanted: (slotIn: number) => boolean) =>
    holes.filter(({ slotIn }) => wanted(slotIn)).map(({ label }) => label)
  const lengths = [...new Set(holes.flatMap(({ slotIn }) => (isMeasurable(slotIn) ? [slotIn] : [])))].sort(
    (a, b) => b - a,
  )
  const free = labels((slotIn) => !isMeasurable(slotIn))
  return [
    ...lengths.map((valueIn): BenchFigure => ({
      code: 'slot',
      holes: labels((slotIn) => slotIn === valueIn),
      valueIn,
      toward,
    })),
    ...(free.length > 0 ? [{ code: 'no-slot', holes: free } as const] : []),
  ]
}

/** What the valves and injectors of a flat-deck head are held to; its thickness too, once it is finished. */
function makerLimits({ flatDeck }: BenchInput, isFinished: boolean): readonly BenchFigure[] {
  if (!flatDeck) return []
  const { recession, protrusion, thicknessLeastIn } = flatDeck
  const hasInjectors = protrusion.leastIn !== null || protrusion.mostIn !== null
  return [
    ...(isFinished ? [] : ports.map((port) => ({ code: 'maker-limits', what: port, ...recession[port] }) as const)),
    ...(hasInjectors ? [{ code: 'maker-limits', what: 'injector', ...protrusion } as const] : []),
    ...(isFinished && thicknessLeastIn !== null
      ? [{ code: 'thickness-least', valueIn: thicknessLeastIn } as const]
      : []),
  ]
}

function seatCircles(input: BenchInput): readonly BenchFigure[] {
  if (input.flatDeck) return makerLimits(input, false)
  const { circleIn } = input
  return ports.flatMap((port) => {
    const diameterIn = circleIn[port]
    return diameterIn === null ? [] : [{ code: 'seat-circle', port, diameterIn } as const]
  })
}

function pistonFigures({ follows, ptvLeastIn }: BenchInput): readonly BenchFigure[] {
  return ports.flatMap((port) =>
    known(follows[port].pistonToValve, `ptv-${port}`, ({ lossIn, remainingIn }) => [
      { code: 'ptv-loss', port, valueIn: lossIn },
      ...(remainingIn === null
        ? []
        : [{ code: 'ptv-left', port, valueIn: remainingIn, minimumIn: ptvLeastIn[port] } as const]),
    ]),
  )
}

function cornersAfter(input: BenchInput, cut: BenchInput['cut']): readonly BenchFigure[] {
  const corners = expectedCorners(input.cornersBefore, cut, input.deck)
  return known(corners, 'corners', (expected) =>
    expected.map(({ corner, valueIn }) => ({ code: 'corner', corner, valueIn })),
  )
}

function marksAt(cut: BenchInput['cut'], { deepEdge }: Deck): readonly BenchFigure[] {
  const facts = knownFacts({
    flatIn: factOf('flat part', cut.flatIn, 'cutDepth'),
    angleIn: factOf('angle part', cut.angleIn, 'cutDepth'),
  })
  return known(facts, 'corners', ({ flatIn, angleIn }) => {
    const at = (edge: Edge) => flatIn + (edge === deepEdge ? angleIn : 0)
    return [{ code: 'marks', intakeIn: at('intake'), exhaustIn: at('exhaust') }]
  })
}
