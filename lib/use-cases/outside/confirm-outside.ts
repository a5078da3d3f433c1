import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { RouteStep } from '@/lib/core/route/types'
import type { StepId } from '@/lib/core/route/step-ids'
import { lineOfOrder, stepsOf, type LineRecord } from '@/lib/data/outside'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { confirmOutsideSchema } from '@/lib/schemas/outside'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { labelOf } from '@/lib/dossier/step-label'

const refused = (message: string) => new RefusedError({ code: 'wrong-state', message })

/** After the arrival a step of the scope is seen to be done, or turns out not to be: the route follows at once. */
export async function confirmOutside(actor: Actor, input: z.output<typeof confirmOutsideSchema>, moment: Moment) {
  must(allow(actor, 'outside.receive'))
  return write(actor, moment, async (ctx) => {
    const line = await lineOfOrder(ctx.tx, input.orderId, input.visitId)
    const { visit, route } = await loadDossier(ctx.tx, input.visitId)
    refuseReleased(visit)
    refuseUnsuited(line, route, input.stepId, input.confirmed)
    const others = stepsOf(line.confirmed).filter((step) => step !== input.stepId)
    const confirmed = input.confirmed ? [...others, input.stepId] : others
    const changed = await ctx.tx.outsideOrderVisit.updateMany({
      where: { id: line.id, confirmed: line.confirmed, rejectedAt: null },
      data: { confirmed: confirmed.join(',') },
    })
    conflictUnless(changed, 'what was confirmed of this head')
    await bumpVisit(ctx.tx, visit)
    const step = { stepId: input.stepId, occurrence: '', orderId: input.orderId }
    await addEvent(ctx, visit.id, input.confirmed ? 'confirm' : 'unconfirm', step, { note: input.reason })
    ctx.audit({
      action: input.confirmed ? 'outside-order.confirm' : 'outside-order.unconfirm',
      subjectId: input.orderId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { step: input.stepId, reason: input.reason },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { confirmed }
  })
}

function refuseUnsuited(line: LineRecord, route: readonly RouteStep[], stepId: StepId, confirm: boolean): void {
  const label = labelOf(route, stepId)
  if (line.receivedAt === null) throw refused('This head is not back yet. Receive it first.')
  if (line.rejectedAt) throw refused('This work was rejected. It cannot be confirmed.')
  if (!stepsOf(line.order.scope).includes(stepId)) throw refused(`${label} was not in this order.`)
  const known = stepsOf(line.confirmed).includes(stepId)
  if (confirm && known) throw refused(`${label} is already confirmed.`)
  if (!confirm && !known) throw refused(`${label} was not confirmed.`)
  const step = route.find((one) => one.stepId === stepId && one.orderId === null)
  if (confirm && step?.state === 'done' && step.byVendor === null) {
    throw refused(`${label} is ticked here. If the vendor did it, take that tick back first.`)
  }
}
