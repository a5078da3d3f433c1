import { ok, refuse, type Result } from '../errors'
import { checkLimits } from './limits'

/**
 * Flow that the same orifice would pass at another test pressure.
 *
 * @param flowCfm flow as read, cfm, 0–2000
 * @param fromInH2O test pressure it was read at, inches of water, 0.5–80
 * @param toInH2O test pressure wanted, inches of water, 0.5–80
 * @returns cfm
 *
 * Assumes incompressible flow and an unchanged discharge coefficient, which holds well only between neighbouring
 * pressures: a converted figure is always marked as converted.
 * Formula: Q₂ = Q₁·√(p₂/p₁). Source: Bernoulli's equation.
 * Example: 100 cfm at 10 inH₂O → 167.3 cfm at 28 inH₂O.
 */
export function convertFlow(flowCfm: number, fromInH2O: number, toInH2O: number): Result<number> {
  const from = checkLimits({ flowCfm, testPressureInH2O: fromInH2O })
  if (!from.ok) return from
  const to = checkLimits({ testPressureInH2O: toInH2O })
  if (!to.ok) return to
  return ok(flowCfm * Math.sqrt(toInH2O / fromInH2O))
}

/**
 * Flow through the valve alone: the reading less what the fixture leaks with the valve shut.
 *
 * @param flowCfm flow as read, cfm, 0–2000
 * @param flowInH2O test pressure of the reading, inches of water, 0.5–80
 * @param leakCfm reading with the valve shut, cfm, 0–2000
 * @param leakInH2O test pressure of the leak reading, inches of water, 0.5–80
 * @returns cfm, never below zero: a leak larger than the reading is refused
 *
 * Assumes that the leak behaves as an orifice. Formula: Q − Q_leak·√(p/p_leak).
 * Example: 250 cfm at 28 inH₂O, leak 3 cfm at 10 inH₂O → 250 − 5.02 = 244.98 cfm.
 * Derived: the leak is brought to the pressure of the reading by `convertFlow`.
 */
export function correctForLeak(flowCfm: number, flowInH2O: number, leakCfm: number, leakInH2O: number): Result<number> {
  const own = checkLimits({ flowCfm, leakCfm })
  if (!own.ok) return own
  const leak = convertFlow(leakCfm, leakInH2O, flowInH2O)
  if (!leak.ok) return leak
  if (leak.value > flowCfm) {
    return refuse(
      'contradiction',
      'The leak with the valve shut is larger than the flow with it open: measure the leak again.',
      { fields: { leakCfm: 'larger than the flow' } },
    )
  }
  return ok(flowCfm - leak.value)
}
