import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'

export type Straightness = {
  readonly acrossLimitIn: number
  readonly alongLimitIn: number
  readonly acrossWithin: boolean
  readonly alongWithin: boolean
}

/**
 * Whether a deck is straight enough, in inches.
 *
 * @param acrossIn, alongIn the widest gap under a straightedge, 0–0.5
 * @param cylinders in this head, 1–12
 * @param limits across, and per cylinder along; the shop's own (default 0.002 and 0.001, AllHead; makers' sums differ)
 *
 * Example: a head of four: 0.002 across, 0.004 along.
 * Derived: the limit per cylinder times the cylinders.
 */
export function judgeStraightness(
  acrossIn: number | null | undefined,
  alongIn: number | null | undefined,
  cylinders: number | null | undefined,
  limits = { acrossIn: 0.002, alongPerCylinderIn: 0.001 },
): Result<Straightness> {
  const facts = knownFacts({
    acrossIn: factOf('straightness across', acrossIn, 'depth'),
    alongIn: factOf('straightness along', alongIn, 'depth'),
    cylinders: factOf('chambers in the head', cylinders, 'chambers'),
    acrossLimitIn: factOf('limit across', limits.acrossIn, 'depth'),
    alongPerCylinderIn: factOf('limit along per cylinder', limits.alongPerCylinderIn, 'depth'),
  })
  if (!facts.ok) return facts
  const { acrossLimitIn, alongPerCylinderIn } = facts.value
  const alongLimitIn = alongPerCylinderIn * facts.value.cylinders
  return ok({
    acrossLimitIn,
    alongLimitIn,
    acrossWithin: facts.value.acrossIn <= acrossLimitIn + 1e-9,
    alongWithin: facts.value.alongIn <= alongLimitIn + 1e-9,
  })
}
