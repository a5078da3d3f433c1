import type { CastingFacts } from '../casting/figures'
import { seatWorkCc } from '../cut/seat-work'
import type { BenchFigure } from './bench-figure'
import { sinkRoom } from './sink-room'

export type SinkInput = {
  /** Null: nothing is asked of the volume, so nothing limits the sink. */
  readonly targetCc: number | null
  readonly toleranceCc: number
  readonly casting: Pick<CastingFacts, 'intakeValveIn' | 'exhaustValveIn' | 'intakeValves' | 'exhaustValves'>
  /** What each chamber holds, sunk seats counted; `isReckoned`: not read since the cut itself. */
  readonly chambers: readonly { readonly chamber: string; readonly cc: number; readonly isReckoned: boolean }[]
  /** A deck cut is still to come, and its plan counts on the seat work to add so many cc; null: nothing is to be cut. */
  readonly cutToCome: { readonly seatWorkGivesCc: number } | null
}

/**
 * What sink the cc target still allows, for the bench that works the seats.
 *
 * @param input cc and inches
 * @returns nothing without a target; before the cut what its plan counts on; else as `sinkRoom`, or what that lacks
 *
 * Before the cut: q = planned cc/Σ n·π/4·D²·16.387064. Derived: `seatWorkCc` solved for the sink.
 * Example: valves of 2.05 and 1.60 in, 0.87 cc planned → 10.0 thou.
 */
export function sinkFigures(input: SinkInput): readonly BenchFigure[] {
  const { targetCc, toleranceCc, casting, chambers, cutToCome } = input
  if (targetCc === null) return []
  if (cutToCome) {
    const perThou = seatWorkCc(casting, 0.001)
    if (!perThou.ok) return [{ code: 'needs', of: 'sink', needs: perThou.refusal.needs ?? [] }]
    const valueIn = (cutToCome.seatWorkGivesCc / perThou.value) * 0.001
    return [{ code: 'sink-planned', valueIn, valueCc: cutToCome.seatWorkGivesCc }]
  }
  const room = sinkRoom(chambers, { cc: targetCc, toleranceCc }, casting)
  if (!room.ok) {
    const { code, needs = [], message } = room.refusal
    return [code === 'missing' ? { code: 'needs', of: 'sink', needs } : { code: 'cannot', of: 'sink', why: message }]
  }
  const isReckoned = chambers.some(({ chamber, isReckoned: is }) => chamber === room.value.chamber && is)
  return [{ code: 'sink-room', targetCc, toleranceCc, isReckoned, ...room.value }]
}
