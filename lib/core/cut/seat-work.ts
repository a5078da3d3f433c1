import type { CastingFacts } from '../casting/figures'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { sinkVolumeCc } from './volume'

type ValveFacts = Pick<CastingFacts, 'intakeValveIn' | 'exhaustValveIn' | 'intakeValves' | 'exhaustValves'>

/** A record that says nothing of it has one intake and one exhaust valve a chamber. */
const usualValves = 1

/**
 * What sinking every valve of a chamber alike adds to it, in cc: the sum of n·π/4·D²·q·16.387064 over intake and exhaust.
 *
 * @param casting valve heads 0.3–5 in, 1–3 intake and 1–3 exhaust valves a chamber (not on record: one of each)
 * @param sinkIn along the valves' axes, 0–0.25 in
 * @returns refused without the valve sizes, unless nothing is sunk
 *
 * Derived: `sinkVolumeCc`, once for each valve. Example: 2.05 and 1.60 in, sunk 0.010 → 0.87 cc; two intake valves of 1.30
 * and two exhaust of 1.10, sunk 0.010 → 0.75 cc.
 */
export function seatWorkCc(casting: ValveFacts, sinkIn: number): Result<number> {
  const { intakeValveIn, exhaustValveIn } = casting
  const valves = knownFacts({
    intakeValves: factOf('intake valves a chamber', casting.intakeValves ?? usualValves, 'valvesPerChamber'),
    exhaustValves: factOf('exhaust valves a chamber', casting.exhaustValves ?? usualValves, 'valvesPerChamber'),
  })
  if (!valves.ok) return valves
  if (sinkIn === 0) return ok(0)
  if (intakeValveIn === undefined || exhaustValveIn === undefined) {
    return refuse('missing', 'Needs intake valve, exhaust valve: the casting record has no valve sizes.', {
      needs: ['intakeValveIn', 'exhaustValveIn'],
    })
  }
  const intake = sinkVolumeCc(intakeValveIn, sinkIn)
  if (!intake.ok) return intake
  const exhaust = sinkVolumeCc(exhaustValveIn, sinkIn)
  if (!exhaust.ok) return exhaust
  return ok(valves.value.intakeValves * intake.value + valves.value.exhaustValves * exhaust.value)
}
