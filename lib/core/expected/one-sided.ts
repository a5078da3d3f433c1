import { together } from './compare'
import type { Expected, ExpectedFacts } from './types'

/**
 * How far out of straight a deck may read before it is questioned, in inches (0–0.5): so many times the shop's limit.
 *
 * Common practice. Example: limit 0.002 across, ten times → 0 to 0.020.
 */
export const expectedStraightness = (point: string, { straightness, limits }: ExpectedFacts): Expected | null =>
  upTo(point === 'along' ? straightness.alongIn : straightness.acrossIn, limits.expectTimesLimit)

/**
 * How much runout of a seat is believed at once, in inches (0–0.5): so many tolerances.
 *
 * Common practice. Example: limit 0.002, three times → 0 to 0.006.
 */
export const expectedRunout = ({ limits }: ExpectedFacts): Expected | null =>
  upTo(limits.runoutLimitIn, limits.expectTimesTolerance)

/**
 * The least vacuum that is believed at once, in inHg (0–30): the shop's least over so many.
 *
 * Common practice. Example: least 18, three times → 6 and more.
 */
export const expectedVacuum = ({ limits }: ExpectedFacts): Expected | null =>
  together([
    { value: null, low: limits.vacuumLeastInHg / limits.expectTimesTolerance, high: null, why: { code: 'limit' } },
  ])

const upTo = (limit: number, times: number): Expected | null =>
  together([{ value: null, low: null, high: limit * times, why: { code: 'limit' } }])
