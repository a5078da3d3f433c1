import { ok, refuse, type Result } from '../errors'
import { convertFlow, correctForLeak } from './pressure'
import type { FlowPoint, FlowRun } from './types'

/**
 * Flow of every point with the leak subtracted and, where a pressure is wanted, converted to it.
 *
 * @param run as read at the bench
 * @param toInH2O pressure wanted, inches of water; null: leave it at the run's own
 * @returns the points in order of lift; those not taken stay not taken
 *
 * A run without its test pressure is only corrected for leak (read at the same pressure, whichever that was) and refuses
 * to be converted. Example: 250 cfm at 28 inH₂O with 2 cfm leak → 248 cfm.
 * Derived: as `correctForLeak`, then `convertFlow`.
 */
export function correctedPoints(run: FlowRun, toInH2O: number | null): Result<readonly FlowPoint[]> {
  const { testPressureInH2O, leakCfm } = run.conditions
  if (toInH2O !== null && testPressureInH2O === null) {
    return refuse('missing', 'Needs the test pressure of the run to convert it.', {
      needs: ['testPressureInH2O'],
    })
  }
  const points: FlowPoint[] = []
  for (const point of [...run.points].sort((a, b) => a.liftIn - b.liftIn)) {
    if (point.flowCfm === null) {
      points.push(point)
      continue
    }
    // The ratio is 1 when the pressure is not known: the leak was read at the same one.
    const own = testPressureInH2O ?? 28
    const open = correctForLeak(point.flowCfm, own, leakCfm ?? 0, own)
    if (!open.ok) return open
    const flow = convertFlow(open.value, own, toInH2O ?? own)
    if (!flow.ok) return flow
    points.push({ ...point, flowCfm: flow.value })
  }
  return ok(points)
}
