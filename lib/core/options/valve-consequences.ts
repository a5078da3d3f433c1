import type { CastingFacts } from '../casting/figures'
import { pistonToValve, valveAngleAfter, type PistonToValve } from '../clearance/piston-to-valve'
import type { Result } from '../errors'
import {
  insertMarks,
  sealingMargin,
  topCutLoss,
  type InsertMarks,
  type SealingMargin,
  type TopCutLoss,
} from '../seat/after-cut'
import type { CircleName, Seat } from '../seat/circles'
import type { ConsequencesInput } from './consequences-input'
import { inRecordsNames, type FigureKey } from './figure-names'

export const ports = ['intake', 'exhaust'] as const
export type Port = (typeof ports)[number]

export type ValveConsequences = {
  readonly angleAfterDeg: Result<number>
  readonly pistonToValve: Result<PistonToValve>
  readonly topCut: Result<TopCutLoss>
  readonly insert: Result<InsertMarks>
  readonly sealing: Result<SealingMargin>
}

/** What a deck cut does to the intake or to the exhaust valve and its seat. Ranges and units as in `consequences`. */
export function valveConsequences(input: ConsequencesInput, port: Port): ValveConsequences {
  const { cut, casting, engine, sinkIn } = input
  const valve = {
    xIn: casting[`${port}ValveXIn`],
    zIn: casting[`${port}ValveZIn`],
    diameterIn: casting[`${port}ValveIn`],
    valveAngleDeg: casting[`${port}ValveAngleDeg`],
    cantDeg: casting[`${port}ValveCantDeg`],
  }
  const seat = seatOf(casting, port)
  return {
    angleAfterDeg: inRecordsNames(valveAngleAfter(cut, valve.valveAngleDeg), names[port].valve),
    pistonToValve: inRecordsNames(
      pistonToValve({
        cut,
        valve,
        liftIn: engine[`${port}LiftIn`],
        sinkIn,
        dowelXIn: casting.dowelXIn,
        measuredIn: engine[`${port}PtvIn`],
      }),
      names[port].valve,
    ),
    topCut: inRecordsNames(topCutLoss(cut, seat), names[port]['top-cut']),
    insert: inRecordsNames(insertMarks(cut, seat), names[port].insert),
    sealing: inRecordsNames(sealingMargin(cut, seat), names[port].sealing),
  }
}

/** The seat as the casting's record has it, gauged to the top-cut circle, which a depth gauge meets first. */
export function seatOf(casting: CastingFacts, port: Port): Seat {
  return {
    circles: {
      sealing: { diameterIn: casting[`${port}SealingIn`] },
      'top-cut': { diameterIn: casting[`${port}TopCutIn`], offsetIn: casting[`${port}TopCutOffsetIn`] },
      insert: { diameterIn: casting[`${port}InsertIn`], offsetIn: casting[`${port}InsertOffsetIn`] },
    },
    gauge: { depthIn: casting[`${port}SeatDepthIn`], circle: 'top-cut' },
    xIn: casting[`${port}ValveXIn`],
    valveAngleDeg: casting[`${port}ValveAngleDeg`],
    cantDeg: casting[`${port}ValveCantDeg`],
  }
}

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
