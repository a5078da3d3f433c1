import type { CastingFacts } from '../casting/figures'
import type { CircleName, Seat } from './circles'

export type Port = 'intake' | 'exhaust'

/** The circle that every record's depth and every reading goes to: a depth gauge meets it first. */
export const namedCircle: CircleName = 'top-cut'

/**
 * The seat as the casting's record has it, gauged from the new deck to the named circle.
 * By definition: the record's figures of that port. Example: `intakeSeatDepthIn` 0.105 → gauge 0.105 to the top-cut
 * circle.
 */
export function seatOfRecord(casting: CastingFacts, port: Port): Seat {
  return {
    circles: {
      sealing: { diameterIn: casting[`${port}SealingIn`] },
      'top-cut': { diameterIn: casting[`${port}TopCutIn`], offsetIn: casting[`${port}TopCutOffsetIn`] },
      insert: { diameterIn: casting[`${port}InsertIn`], offsetIn: casting[`${port}InsertOffsetIn`] },
    },
    gauge: { depthIn: casting[`${port}SeatDepthIn`], circle: namedCircle },
    xIn: casting[`${port}ValveXIn`],
    valveAngleDeg: casting[`${port}ValveAngleDeg`],
    cantDeg: casting[`${port}ValveCantDeg`],
  }
}
