import { noRules } from './rules'
import type { RouteSettings } from './types'

/**
 * What a shop starts with; the owner changes each of them. All are common practice unless the line says otherwise: no
 * standard sets them, and the makers of head, gasket and engine come first.
 */
export const defaultRouteSettings: RouteSettings = {
  ccToleranceCc: 0.5,
  ccMatchCc: 0.5,
  // Valve seats sit some 30 thou or more above the deck on most heads: a skim to here leaves the top cut alone.
  cleanUpSeatLimitIn: 0.01,
  // From new, over all visits.
  boltReachLimitIn: 0.03,
  dowelLimitIn: 0.03,
  // Half a turn of a common rocker adjuster; beyond this the pushrod length is worth a look.
  rockerLimitIn: 0.03,
  // At the intake face; ports are often smaller in the manifold by more than this.
  intakeLimitIn: 0.015,
  // A flat cut takes its own depth from the clearance.
  ptvLossLimitIn: 0.02,
  // The larger of the customary least clearances (published 0.080 intake, 0.100 exhaust; makers' figures come first).
  ptvRemainingLimitIn: 0.1,
  // Beyond this the depth from touch-off is no longer enough: four corners.
  cornersLimitIn: 0.02,
  checkCcDeeperThanIn: 0.02,
  // Published default of one maker, sums differ; the gasket maker's figure comes first.
  straightAcrossIn: 0.002,
  straightAlongPerCylinderIn: 0.001,
  pairThicknessIn: 0.002,
  // Least distance of the sealing line from the deck; must stay positive whatever is set here.
  sealingMarginIn: 0.005,
  // Off: a shop that has two machinists asks for it.
  secondCheckDeeperThanIn: 0,
  rules: noRules,
}
