import { goneAgreesIn } from '../head-now/metal-gone'
import { together } from './compare'
import type { Expected, ExpectedFacts } from './types'

/**
 * How much a head that was cut here before must have lost at least, in inches (0–1): metal does not come back.
 *
 * @returns null where this shop did not cut it before, or does not know what was gone then
 *
 * What was gone when it left, at the edge where less was, less 3 thou. More is believed: others may have cut it since.
 * Common practice. Example: 0.030 gone when it left → 0.027 and more.
 */
export function expectedRemovedBefore({ thickness: { earlier } }: ExpectedFacts): Expected | null {
  if (!earlier) return null
  const low = Math.max(0, earlier.goneIn - goneAgreesIn)
  return together([{ value: null, low, high: null, why: { code: 'earlier-visit', ...earlier } }])
}
