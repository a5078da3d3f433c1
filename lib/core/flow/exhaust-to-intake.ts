import { ok, refuse, type Result } from '../errors'
import { leastFlowCfm } from './limits'
import { correctedPoints } from './run'
import type { FlowRun } from './types'

/**
 * What the exhaust port flows of what the intake port flows, at each lift both were run at.
 *
 * @param intake intake run
 * @param exhaust exhaust run; converted to the intake run's pressure when the two differ
 * @returns per lift, per cent
 *
 * Both test pressures must be known unless neither is noted. Formula: 100·Q_ex/Q_in, leak subtracted both.
 * Example: 121 and 93 cfm at 10 inH₂O → 76.9 %.
 * By definition: exhaust over intake.
 */
export function exhaustToIntake(
  intake: FlowRun,
  exhaust: FlowRun,
): Result<readonly { readonly liftIn: number; readonly percent: number }[]> {
  if (intake.conditions.port !== 'intake' || exhaust.conditions.port !== 'exhaust') {
    return refuse('contradiction', 'The ratio is of an exhaust run to an intake run.')
  }
  const [wanted, own] = [intake.conditions.testPressureInH2O, exhaust.conditions.testPressureInH2O]
  if ((wanted === null) !== (own === null)) {
    return refuse('missing', 'Needs the test pressure of both runs.', { needs: ['testPressureInH2O'] })
  }
  const intakePoints = correctedPoints(intake, null)
  if (!intakePoints.ok) return intakePoints
  const exhaustPoints = correctedPoints(exhaust, wanted)
  if (!exhaustPoints.ok) return exhaustPoints
  const exhaustFlows = new Map(exhaustPoints.value.map((point) => [point.liftIn, point.flowCfm]))
  return ok(
    intakePoints.value.flatMap(({ liftIn, flowCfm }) => {
      const other = exhaustFlows.get(liftIn) ?? null
      return flowCfm === null || flowCfm < leastFlowCfm || other === null
        ? []
        : [{ liftIn, percent: (100 * other) / flowCfm }]
    }),
  )
}
