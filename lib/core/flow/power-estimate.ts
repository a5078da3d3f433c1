import { ok, type Result } from '../errors'
import { convertFlow } from './pressure'
import { checkLimits } from './limits'

/** hp for each cfm of one intake port at 10 inH₂O, per cylinder. */
const powerPerCfm = 0.43
const rulePressureInH2O = 10

/**
 * Horsepower that the intake ports could feed: an estimate, and to be labelled so wherever it is shown.
 *
 * @param flowCfm best flow of one intake port, cfm, 0–2000
 * @param testPressureInH2O test pressure, inches of water, 0.5–80
 * @param cylinders number of cylinders, 1–24
 * @returns hp
 *
 * Assumes a naturally aspirated gasoline engine in which nothing else limits. Formula: 0.43·cfm at 10 inH₂O·cylinders
 * (0.257 at 28 inH₂O). Source: Denny's Hangout. Example: 126 cfm at 10 inH₂O, 8 cylinders → 433 hp.
 */
export function powerEstimateHp(flowCfm: number, testPressureInH2O: number, cylinders: number): Result<number> {
  const checked = checkLimits({ cylinders })
  if (!checked.ok) return checked
  const flow = convertFlow(flowCfm, testPressureInH2O, rulePressureInH2O)
  if (!flow.ok) return flow
  return ok(powerPerCfm * flow.value * cylinders)
}
