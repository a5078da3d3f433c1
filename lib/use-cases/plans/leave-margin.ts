import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { newestChoice } from '@/lib/data/outside'
import { db } from '@/lib/data/db'
import type { Moment } from '@/lib/data/write'
import { planChoiceSchema } from '@/lib/schemas/plan'
import type { leaveMarginSchema } from '@/lib/schemas/outside'
import { makePlanVersion } from './make-plan-version'

/**
 * Plans an angle cut again as angle and flat, with a flat part worth the shop's margin: the vendor cuts the angle, and the
 * last cut lands on size here. A new version like any other, so the customer's acceptance of the one before is void.
 */
export async function leaveMargin(
  actor: Actor,
  { pairId, seenVersion }: z.output<typeof leaveMarginSchema>,
  moment: Moment,
) {
  must(allow(actor, 'plan.make'))
  const sinkIn = await newestChoice(await db(), pairId)
  const choice = planChoiceSchema.parse({
    pairId,
    seenVersion,
    kind: 'angle-flat',
    splitBy: 'margin',
    flatIn: '',
    angleIn: '',
    angleDeg: '',
    stopAtIn: '',
    sinkIn,
    reason: 'The vendor leaves a flat part for us to cut to size.',
  })
  return makePlanVersion(actor, choice, moment)
}
