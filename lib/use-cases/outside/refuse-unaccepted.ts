import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/step-ids'
import type { Write } from '@/lib/data/write'
import type { Dossier } from '@/lib/dossier/dossier'

/** Whether an angle cut of this head may go out by what the customer said: the newest plan is accepted. */
export const isAccepted = ({ visit }: Pick<Dossier, 'visit'>): boolean =>
  (visit.pair.plans[0]?.acceptances.length ?? 0) > 0

/**
 * An angle cut cannot be put back: it goes out when the customer has accepted what follows from it. The owner may send it
 * without; the reason stays in the trail.
 */
export function refuseUnaccepted(
  ctx: Write,
  actor: Actor,
  found: Dossier,
  { scope, unacceptedWhy }: { readonly scope: readonly StepId[]; readonly unacceptedWhy: string },
): void {
  const { visit, label } = found
  if (!scope.includes('angle-cut') || isAccepted(found)) return
  const mayOverride = can(actor, 'plan.override')
  if (unacceptedWhy === '' || !mayOverride) {
    throw new RefusedError({
      code: 'invalid',
      message: `The customer has not accepted this cut yet (${label}). Record the yes first${
        mayOverride ? ', or enter why it goes out without it.' : '; only the owner sends it without.'
      }`,
      ...(mayOverride && { fields: { unacceptedWhy: 'Enter why it goes out without the customer’s yes.' } }),
    })
  }
  ctx.audit({
    action: 'plan.send-unaccepted',
    subjectId: visit.pair.plans[0]?.id ?? visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { reason: unacceptedWhy },
  })
}
