import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { angleLeftIn, flatLeftIn } from '@/lib/core/route/outside-cuts'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'
import { newId } from '@/lib/data/ids'
import { lineOfOrder } from '@/lib/data/outside'
import { addPromise, nextOrderNumber } from '@/lib/data/vendor-orders'
import { vendorInUse } from '@/lib/data/vendors'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { sendOutsideSchema } from '@/lib/schemas/outside'
import { headLabel } from '@/lib/core/shop/tag-number'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { refuseUnaccepted } from './refuse-unaccepted'
import { labelOf } from '@/lib/dossier/step-label'
import type { Wait } from '@/lib/core/route/codes'
import { sameKey } from '@/lib/core/route/keys'
import { waitText } from '@/lib/words/route'

type Input = z.output<typeof sendOutsideSchema>

const refused = (message: string) => new RefusedError({ code: 'wrong-state', message })

/**
 * Sends heads to a vendor. An angle cut goes out with the angle part alone unless told otherwise: the last cut lands on
 * size in house, so a plan without a flat part goes out only when the vendor finishes to size.
 */
export async function sendOutside(actor: Actor, input: Input, moment: Moment) {
  must(allow(actor, 'outside.send'))
  return write(actor, moment, async (ctx) => {
    const vendor = await vendorInUse(ctx.tx, input.vendorId)
    if (!vendor) throw refused('This vendor is no longer in use. Pick another.')
    const orderId = newId(ctx.now)
    const number = await nextOrderNumber(ctx.tx, 'outside')
    await ctx.tx.outsideOrder.create({
      data: {
        id: orderId,
        number,
        vendorId: vendor.id,
        instructions: input.instructions,
        scope: input.scope.join(','),
        redoOfId: await redoOf(ctx, input),
        redoCost: input.redoCost,
        finishesToSize: input.finishesToSize,
        freight: input.freight,
        tracking: input.tracking,
        createdAt: ctx.now,
        byId: actor.personId,
        sentAt: ctx.now,
        promisedOn: input.promisedOn,
      },
    })
    const { promisedOn } = input
    if (promisedOn) await addPromise(ctx, 'outside', { orderId, promisedOn, note: 'at sending' })
    for (const head of input.heads) await sendHead(ctx, actor, input, orderId, head)
    ctx.audit({
      action: 'outside-order.send',
      subjectId: orderId,
      changes: { number, scope: input.scope },
    })
    return { orderId, number }
  })
}

/** Work is done again of what was rejected, and of nothing else. */
async function redoOf(ctx: Write, { redoOfId, heads }: Input): Promise<string | null> {
  if (redoOfId === '') return null
  for (const { visitId } of heads) {
    const line = await lineOfOrder(ctx.tx, redoOfId, visitId)
    if (line.rejectedAt === null) throw refused('A rework order is only for rejected work.')
  }
  return redoOfId
}

async function sendHead(
  ctx: Write,
  actor: Actor,
  input: Input,
  orderId: string,
  head: Input['heads'][number],
): Promise<void> {
  const found = await loadDossier(ctx.tx, head.visitId)
  const { visit, facts } = found
  refuseReleased(visit)
  refuseNotReady(found, input.scope)
  refuseUnaccepted(ctx, actor, found, input)
  const share = vendorShare(found, input, head)
  await bumpVisit(ctx.tx, visit)
  await ctx.tx.outsideOrderVisit.create({
    data: {
      id: newId(ctx.now),
      orderId,
      visitId: visit.id,
      ...share,
      comesWith: head.comesWith,
      confirmed: '',
      marksTyped: '',
      marksRead: '',
      redoCost: '',
    },
  })
  await addEvent(ctx, visit.id, 'sent', null, { orderId })
  ctx.audit({
    action: 'visit.send-out',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { orderId, ...share, plan: facts.plan?.kind ?? 'none' },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}

function refuseNotReady({ visit, facts, route }: Dossier, scope: readonly StepId[]): void {
  const tag = headLabel(visit)
  if (facts.onOrder) throw refused(`${tag} is on order and not here yet.`)
  if (facts.openHolds.length > 0) throw refused(`${tag} is on hold. The owner must decide first.`)
  if (facts.orders.some((order) => order.sentSeq !== null && order.receivedSeq === null)) {
    throw refused(`${tag} is already out.`)
  }
  const steps = route.filter((step) => scope.includes(step.stepId) && step.state !== 'not needed')
  if (steps.length === 0)
    throw refused(`None of this work is on the route of ${tag}. Change the work or the plan first.`)
  const absent = scope.find((stepId) => !steps.some((step) => step.stepId === stepId))
  if (absent) throw refused(`${labelOf(route, absent)} is not on the route of ${tag}. Send ${tag} in a separate order.`)
  const waiting = steps.find((step) => step.waitsFor.length > 0 && !scopeCovers(step.waitsFor, steps))
  if (waiting)
    throw refused(`${tag} cannot go yet: ${waiting.label} is waiting for ${waiting.waitsFor.map(waitText).join(', ')}.`)
}

const scopeCovers = (waits: readonly Wait[], steps: readonly StepKey[]): boolean =>
  waits.every((wait) => wait.code === 'step' && steps.some((step) => sameKey(step, wait.step)))

/** Angle part and flat part that the vendor cuts off this head. */
function vendorShare({ facts }: Dossier, input: Input, head: Input['heads'][number]) {
  const leftIn = flatLeftIn(facts)
  const cutsAngle = input.scope.includes('angle-cut')
  const cutsFlat = input.scope.includes('flat-cut') || (cutsAngle && input.finishesToSize)
  const angleIn = cutsAngle ? (head.angleIn?.value ?? angleLeftIn(facts)) : 0
  const flatIn = head.flatIn?.value ?? (cutsFlat ? leftIn : 0)
  if (cutsAngle && !input.finishesToSize && leftIn - flatIn <= 0) {
    throw refused(
      'This plan leaves nothing for the last cut in house. Plan an angle cut with a flat part, or have the vendor finish to size.',
    )
  }
  return { angleIn, flatIn }
}
