import { ok, type Result } from '../errors'
import { checkLimits } from './limits'

/** Standard air, lb/ft³ (70 °F, 29.92 inHg, dry, as the ventilation trade rounds it). */
export const standardAirLbFt3 = 0.075

/** ft/min for √(inH₂O per lb/ft³), as printed in ventilation handbooks. */
const velocityPressureFactor = 1096.7

const squareInchesPerSquareFoot = 144
const secondsPerMinute = 60

/**
 * Speed that a test pressure alone would give to air: the ideal that coefficients are taken against.
 *
 * @param testPressureInH2O inches of water, 0.5–80
 * @param densityLbFt3 air density, lb/ft³, 0.02–0.2; standard air (0.075) unless given
 * @returns ft/s
 *
 * Assumes incompressible flow without loss. Formula: V[ft/min] = 1096.7·√(H/ρ).
 * Source: ACGIH, Industrial Ventilation (V = 4005·√VP for standard air).
 * Example: 28 inH₂O, 0.075 lb/ft³ → 21,190 ft/min = 353.2 ft/s.
 */
export function idealVelocityFps(testPressureInH2O: number, densityLbFt3 = standardAirLbFt3): Result<number> {
  const checked = checkLimits({ testPressureInH2O, densityLbFt3 })
  if (!checked.ok) return checked
  return ok((velocityPressureFactor * Math.sqrt(testPressureInH2O / densityLbFt3)) / secondsPerMinute)
}

/**
 * Mean speed of a flow through a cross-section.
 *
 * @param flowCfm cfm, 0–2000
 * @param areaIn2 cross-section, in², 0.01–100
 * @returns ft/s
 *
 * Formula: (144/60)·Q/A = 2.4·Q/A. Example: 309 cfm through 2.1 in² → 353.1 ft/s.
 * Derived: flow over area.
 */
export function meanVelocityFps(flowCfm: number, areaIn2: number): Result<number> {
  const checked = checkLimits({ flowCfm, areaIn2 })
  if (!checked.ok) return checked
  return ok(((squareInchesPerSquareFoot / secondsPerMinute) * flowCfm) / areaIn2)
}

/**
 * Flow that an opening would pass without loss, per square inch.
 *
 * @param testPressureInH2O inches of water, 0.5–80
 * @param densityLbFt3 air density, lb/ft³; standard air (0.075) unless given
 * @returns cfm per in²
 *
 * Assumes incompressible flow. Formula: V[ft/min]/144; 147.15·√(p/28) in standard air.
 * Example: 28 inH₂O → 147.15 cfm/in²; through 2.1 in² → 309 cfm.
 * Derived: `idealVelocityFps` through one square inch.
 */
export function idealFlowCfmPerIn2(testPressureInH2O: number, densityLbFt3 = standardAirLbFt3): Result<number> {
  const velocity = idealVelocityFps(testPressureInH2O, densityLbFt3)
  if (!velocity.ok) return velocity
  return ok((velocity.value * secondsPerMinute) / squareInchesPerSquareFoot)
}
