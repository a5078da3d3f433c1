import type { Fact } from '../known-facts'
import type { Rate } from './rate'

/** Standard uncertainty of a chamber, 0–20 cc. */
export const uncertaintyFact = (label: string, uCc: number): Fact => [label, uCc, 0, 20]

/** Standard uncertainty of a depth setting, 0–20 thou. */
export const depthErrorFact = (depthErrorThou: number): Fact => [
  'error of the depth setting in thou',
  depthErrorThou,
  0,
  20,
]

/** Spread of the rate between heads, as a part of it. */
export const betweenHeadFact = (part: number): Fact => ['spread between heads', part, 0, 1]

/** A rate above 0 and up to 10 cc per thou; its standard uncertainty 0–10. */
export const rateFacts = ({ ccPerThou, uCcPerThou }: Rate) =>
  ({
    ccPerThou: ['rate in cc per thou', ccPerThou, 1e-6, 10],
    uCcPerThou: ['uncertainty of the rate', uCcPerThou, 0, 10],
  }) as const
