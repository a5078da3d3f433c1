import { can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'
import { stepsOf } from '@/lib/data/outside'
import type { Dossier } from '@/lib/dossier/dossier'
import { labelOf } from '@/lib/dossier/step-label'

/** What the arrival check needs to receive this head of its order. */
export type ReceiveAtStep = {
  readonly orderId: string
  readonly number: string
  readonly vendor: string
  /** What the vendor was asked to do. */
  readonly scope: readonly { readonly id: StepId; readonly label: string }[]
}

/** At an arrival check of an order that this head is still out on, for whoever may receive it; null otherwise. */
export function receiveAtStep({ visit, route }: Dossier, step: StepKey, actor: Actor): ReceiveAtStep | null {
  if (step.orderId === null || !can(actor, 'outside.receive')) return null
  const line = visit.outside.find(({ orderId }) => orderId === step.orderId)
  if (!line || line.receivedAt !== null || line.order.sentAt === null) return null
  return {
    orderId: line.orderId,
    number: line.order.number,
    vendor: line.order.vendor.name,
    scope: stepsOf(line.order.scope).map((id) => ({ id, label: labelOf(route, id) })),
  }
}
