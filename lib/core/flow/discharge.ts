import { ok, refuse, type Result } from '../errors'
import { checkLimits, leastLiftIn } from './limits'
import { idealFlowCfmPerIn2, standardAirLbFt3 } from './velocity'

export type DischargeInput = {
  readonly flowCfm: number
  readonly testPressureInH2O: number
  readonly valveDiameterIn: number
  readonly liftIn: number
  /** Standard air (0.075 lb/ft³) unless given, whatever the day. */
  readonly densityLbFt3?: number
}

/**
 * Share of the ideal flow that passes the valve's curtain, and of that through an opening of the valve head's area.
 *
 * @param input flow (cfm, 0–2000), test pressure (inH₂O, 0.5–80), valve head diameter (in, 0.3–5), lift (in, above 0 to
 *   2), air density (lb/ft³)
 * @returns both coefficients, without unit; they are equal at a lift of a quarter of the diameter
 *
 * Assumes an incompressible ideal of standard air, and the cylindrical curtain π·D·L. The isentropic ideal of the same
 * bore is about 4 % lower at 28 inH₂O, so coefficients taken against it come out about 4 % higher.
 * Formula: C = Q/(A·147.15·√(p/28)), A = π·D·L (curtain) or π/4·D² (head).
 * Example: 250 cfm, 28 inH₂O, 2.02 in, 0.500 in → curtain 0.535, head 0.530.
 * By definition: flow over the ideal flow of the area.
 */
export function dischargeCoefficients(
  input: DischargeInput,
): Result<{ readonly curtain: number; readonly head: number }> {
  const { flowCfm, testPressureInH2O, valveDiameterIn, liftIn, densityLbFt3 = standardAirLbFt3 } = input
  const checked = checkLimits({ flowCfm, testPressureInH2O, valveDiameterIn, liftIn, densityLbFt3 })
  if (!checked.ok) return checked
  if (liftIn < leastLiftIn) return refuse('out-of-range', 'A shut valve has no curtain: the lift must be above 0.')
  const ideal = idealFlowCfmPerIn2(testPressureInH2O, densityLbFt3)
  if (!ideal.ok) return ideal
  const curtainIn2 = Math.PI * valveDiameterIn * liftIn
  const headIn2 = (Math.PI / 4) * valveDiameterIn ** 2
  return ok({
    curtain: flowCfm / (curtainIn2 * ideal.value),
    head: flowCfm / (headIn2 * ideal.value),
  })
}
