/**
 * How far a reading may lie from what it is held against before it is questioned. Every one is a setting of the shop; the
 * defaults are common practice, from memory, and no standard sets them.
 */
export type ExpectedLimits = {
  /** A chamber after a cut: the larger of this, in cc, and so many standard uncertainties. */
  readonly expectAfterCutCc: number
  readonly expectAfterCutTimesU: number
  /** A chamber beside the others: the larger of the two, and never more than a part of what is expected. */
  readonly expectChamberCc: number
  readonly expectChamberTimesU: number
  readonly expectChamberMostPart: number
  /** A chamber against its nominal volume less what is gone, as a part of that. */
  readonly expectNominalPart: number
  readonly expectPlaneIn: number
  readonly expectThickerIn: number
  readonly expectThinnerIn: number
  readonly expectSeatBeforeIn: number
  readonly expectSeatAfterIn: number
  readonly expectSeatDeeperIn: number
  readonly expectDepthOverIn: number
  /** Under this part of the advised depth it is questioned. */
  readonly expectDepthLeastPart: number
  readonly expectTimesLimit: number
  readonly expectFlowBelowPart: number
  readonly expectFlowRisePart: number
  readonly expectFlowRiseFromIn: number
  readonly expectFlowLinePart: number
  readonly expectFlowRunPart: number
  /** Of a figure with a tolerance, so many tolerances. */
  readonly expectTimesTolerance: number
  readonly seatWidthToleranceIn: number
  readonly guideClearanceToleranceIn: number
  readonly insertPressToleranceIn: number
  readonly recessionToleranceIn: number
  readonly stemHeightToleranceIn: number
  readonly installedHeightToleranceIn: number
  readonly retainerToSealToleranceIn: number
  readonly coilBindToleranceIn: number
  readonly springPressureTolerancePart: number
  readonly runoutLimitIn: number
  /** A seat that holds less is looked at again. */
  readonly vacuumLeastInHg: number
  /** Together impossible: what must be left at full lift. */
  readonly retainerMarginIn: number
  readonly coilBindMarginIn: number
  readonly thickerAfterCutIn: number
}

export const defaultExpectedLimits: ExpectedLimits = {
  expectAfterCutCc: 1,
  expectAfterCutTimesU: 3.5,
  expectChamberCc: 1.5,
  expectChamberTimesU: 4,
  expectChamberMostPart: 0.1,
  expectNominalPart: 0.15,
  expectPlaneIn: 0.01,
  expectThickerIn: 0.003,
  expectThinnerIn: 0.01,
  expectSeatBeforeIn: 0.015,
  expectSeatAfterIn: 0.005,
  expectSeatDeeperIn: 0.002,
  expectDepthOverIn: 0.002,
  expectDepthLeastPart: 0.1,
  expectTimesLimit: 10,
  expectFlowBelowPart: 0.85,
  expectFlowRisePart: 1.15,
  expectFlowRiseFromIn: 0.1,
  expectFlowLinePart: 0.2,
  expectFlowRunPart: 0.25,
  expectTimesTolerance: 3,
  seatWidthToleranceIn: 0.01,
  guideClearanceToleranceIn: 0.0005,
  insertPressToleranceIn: 0.001,
  recessionToleranceIn: 0.005,
  stemHeightToleranceIn: 0.01,
  installedHeightToleranceIn: 0.01,
  retainerToSealToleranceIn: 0.02,
  coilBindToleranceIn: 0.01,
  springPressureTolerancePart: 0.1,
  runoutLimitIn: 0.002,
  vacuumLeastInHg: 18,
  // The spring maker's figures go first.
  retainerMarginIn: 0.05,
  coilBindMarginIn: 0.06,
  thickerAfterCutIn: 0.002,
}

/** These limits out of all the settings of a shop: a screen carries no more than it asks. */
export const expectedLimitsOf = (settings: ExpectedLimits): ExpectedLimits =>
  Object.fromEntries(limitKeys.map((key) => [key, settings[key]])) as ExpectedLimits

const limitKeys = Object.keys(defaultExpectedLimits) as (keyof ExpectedLimits)[]
