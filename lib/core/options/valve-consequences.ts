import type { CastingFacts } from '../casting/figures'
import { pistonToValve, valveAngleAfter, type PistonToValve } from '../clearance/piston-to-valve'
import { ok, refuse, type Result } from '../errors'
import { nearestSeat, type NearestSeat } from '../head-now/seat-now'
import {
  insertMarks,
  sealingMargin,
  topCutLoss,
  type InsertMarks,
  type SealingMargin,
  type TopCutLoss,
} from '../seat/after-cut'
import type { CircleName } from '../seat/circles'
import type { Port } from '../seat/seat-of-record'
import type { ConsequencesInput } from './consequences-input'
import { inRecordsNames, type FigureKey } from './figure-names'
import { worstOf, type HeadOnDeck, type OfHead } from './heads-on-deck'

export type { Port } from '../seat/seat-of-record'
export const ports = ['intake', 'exhaust'] as const

/** A figure of a seat, with what its depth stands on. */
export type OnSeat<T> = OfHead<T & Pick<NearestSeat, 'ground' | 'notRead'>>

/** The sealing line before the cut too: a deck that has already gone through it stops the work. */
export type SealingLine = SealingMargin & { readonly beforeIn: number }

export type ValveConsequences = {
  readonly angleAfterDeg: Result<number>
  readonly pistonToValve: Result<PistonToValve>
  readonly topCut: Result<OnSeat<TopCutLoss>>
  readonly insert: Result<OnSeat<InsertMarks>>
  readonly sealing: Result<OnSeat<SealingLine>>
}

/**
 * What a deck cut does to the intake or to the exhaust valve and its seat, from the deck as it is now: of several heads
 * the one that comes off worst. Ranges and units as in `consequences`.
 */
export function valveConsequences(
  input: ConsequencesInput,
  heads: readonly HeadOnDeck[],
  port: Port,
): ValveConsequences {
  const { cut } = input
  return {
    angleAfterDeg: angleAfter(input, heads, port),
    pistonToValve: pistonLoss(input, heads, port),
    topCut: onSeats(
      input,
      heads,
      port,
      'top-cut',
      (seat) => topCutLoss(cut, seat),
      (found) => -found.lostShare,
    ),
    insert: onSeats(
      input,
      heads,
      port,
      'insert',
      (seat) => insertMarks(cut, seat),
      (found) => -found.share,
    ),
    sealing: onSeats(
      input,
      heads,
      port,
      'sealing',
      (seat) => sealingLine(cut, seat),
      (found) => found.marginIn,
    ),
  }
}

type Seat = NearestSeat['seat']

function sealingLine(cut: ConsequencesInput['cut'], seat: Seat): Result<SealingLine> {
  const after = sealingMargin(cut, seat)
  const before = sealingMargin({ flatIn: 0, angleIn: 0, milledWidthIn: cut.milledWidthIn }, seat)
  if (!after.ok) return after
  return before.ok ? ok({ ...after.value, beforeIn: before.value.marginIn }) : before
}

function onSeats<T extends object>(
  { casting: record }: ConsequencesInput,
  heads: readonly HeadOnDeck[],
  port: Port,
  circle: CircleName,
  ask: (seat: Seat) => Result<T>,
  figureOf: (found: T) => number,
): Result<OnSeat<T>> {
  const found = worstOf<T & Pick<NearestSeat, 'ground' | 'notRead'>>(
    heads,
    ({ deckBefore, seatReadings: readings, chambers }) => {
      const deck = deckBefore.ok ? deckBefore.value : null
      if (!deckBefore.ok && deckBefore.refusal.code !== 'missing') return deckBefore
      const nearest = nearestSeat({ record, port, deck, readings, chambers })
      if (!nearest.ok) return nearest
      const answer = ask(nearest.value.seat)
      const { ground, notRead } = nearest.value
      return answer.ok ? ok({ ...answer.value, ground, notRead }) : answer
    },
    figureOf,
  )
  return inRecordsNames(found, names[port][circle])
}

function angleAfter({ cut }: ConsequencesInput, heads: readonly HeadOnDeck[], port: Port): Result<number> {
  const found = worstOf(
    heads,
    ({ casting }) => {
      const deg = valveAngleAfter(cut, casting[`${port}ValveAngleDeg`])
      return deg.ok ? ok({ deg: deg.value }) : deg
    },
    ({ deg }) => -Math.abs(deg),
  )
  return inRecordsNames(found.ok ? ok(found.value.deg) : found, names[port].valve)
}

function pistonLoss(input: ConsequencesInput, heads: readonly HeadOnDeck[], port: Port): Result<PistonToValve> {
  const { cut, engine, sinkIn } = input
  if (engine.valvesInBlock === true) {
    return refuse(
      'out-of-range',
      'The valves sit in the block: the cut takes from valve to head, not from piston to valve. Measure valve to head at full lift.',
    )
  }
  const found = worstOf(
    heads,
    ({ casting }) =>
      pistonToValve({
        cut,
        valve: valveOf(casting, port),
        liftIn: engine[`${port}LiftIn`],
        sinkIn,
        dowelXIn: casting.dowelXIn,
        measuredIn: engine[`${port}PtvIn`],
      }),
    ({ lossIn }) => -lossIn,
  )
  return inRecordsNames(found, names[port].valve)
}

const valveOf = (casting: CastingFacts, port: Port) => ({
  xIn: casting[`${port}ValveXIn`],
  zIn: casting[`${port}ValveZIn`],
  diameterIn: casting[`${port}ValveIn`],
  valveAngleDeg: casting[`${port}ValveAngleDeg`],
  cantDeg: casting[`${port}ValveCantDeg`],
})

type Names = Readonly<Record<string, FigureKey>>

const valveNames = (port: Port): Names => ({
  xIn: `${port}ValveXIn`,
  zIn: `${port}ValveZIn`,
  diameterIn: `${port}ValveIn`,
  valveAngleDeg: `${port}ValveAngleDeg`,
  cantDeg: `${port}ValveCantDeg`,
  liftIn: `${port}LiftIn`,
})

/** A seat's calculation knows two circles: the one that was gauged, and the one that is asked for. */
const seatNames = (port: Port, asked: CircleName): Names => ({
  ...valveNames(port),
  depthIn: `${port}SeatDepthIn`,
  gaugedDiameterIn: `${port}TopCutIn`,
  gaugedOffsetIn: `${port}TopCutOffsetIn`,
  diameterIn: `${port}${circleKeys[asked]}In`,
  offsetIn: `${port}${asked === 'insert' ? 'Insert' : 'TopCut'}OffsetIn`,
})

const circleKeys = { sealing: 'Sealing', 'top-cut': 'TopCut', insert: 'Insert' } as const

/** Made once: a slider asks for them at every move, and they are read only when a figure is missing. */
const namesOf = (port: Port) => ({
  valve: valveNames(port),
  'top-cut': seatNames(port, 'top-cut'),
  insert: seatNames(port, 'insert'),
  sealing: seatNames(port, 'sealing'),
})
const names = { intake: namesOf('intake'), exhaust: namesOf('exhaust') }
