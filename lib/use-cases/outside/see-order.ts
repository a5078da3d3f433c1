import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { stepsOf, wholeOrder, type WholeOrder } from '@/lib/data/outside'
import { orderedHead, promiseViews, type OrderedHead, type PromiseView } from '@/lib/data/vendor-orders'
import { routeStepOf } from '@/lib/data/visits'
import { labelOf } from '@/lib/dossier/step-label'
import { reasonText } from '@/lib/words/route'

export type OrderStep = {
  readonly id: StepId
  readonly label: string
  /** Confirmed: the vendor's. Done here: it was done in the shop since. */
  readonly state: 'confirmed' | 'done here' | 'open'
}

export type OrderHead = OrderedHead & {
  readonly pairId: string
  readonly angleIn: number
  readonly flatIn: number
  readonly receivedAt: Date | null
  readonly steps: readonly OrderStep[]
  readonly marksTyped: string
  readonly marksRead: string
  readonly rejected: { readonly why: string; readonly cost: string } | null
  /** The order that does it again; null: none yet. */
  readonly redo: { readonly orderId: string; readonly number: string } | null
  /** What the corners say is short; '' when nothing is, or they were not read. */
  readonly short: string
  /** Released or gone: nothing is changed at it any more. */
  readonly frozen: boolean
}

export type OrderPage = {
  readonly orderId: string
  readonly number: string
  readonly version: number
  readonly vendor: { readonly id: string; readonly name: string; readonly phone: string }
  readonly scope: readonly { readonly id: StepId; readonly label: string }[]
  readonly finishesToSize: boolean
  readonly instructions: string
  readonly freight: string
  readonly tracking: string
  readonly returnTracking: string
  readonly sentAt: Date | null
  readonly acceptedAt: Date | null
  readonly promisedOn: string | null
  readonly promises: readonly PromiseView[]
  readonly redoOf: { readonly orderId: string; readonly number: string; readonly cost: string } | null
  readonly heads: readonly OrderHead[]
  readonly may: { readonly send: boolean; readonly receive: boolean; readonly cost: boolean }
  /** Left out for those who may not see it. */
  readonly cost?: { readonly workMinor: number | null; readonly freightMinor: number | null }
}

/** One outside order with its heads, promises and what came back. Cost stays with those who may see it. */
export async function seeOrder(actor: Actor, orderId: string): Promise<OrderPage> {
  must(allow(actor, 'outside.see'))
  const order = await wholeOrder(await db(), orderId)
  if (!order) throw new RefusedError({ code: 'not-found', message: 'Outside order not found.' })
  const may = {
    send: can(actor, 'outside.send'),
    receive: can(actor, 'outside.receive'),
    cost: sees(actor, 'vendor cost'),
  }
  const labels = order.visits.flatMap((line) => line.visit.steps)
  const { vendor, redoOf } = order
  return {
    orderId: order.id,
    number: order.number,
    version: order.version,
    vendor: { id: vendor.id, name: vendor.name, phone: vendor.phone },
    scope: stepsOf(order.scope).map((id) => ({ id, label: labelOf(labels, id) })),
    finishesToSize: order.finishesToSize,
    instructions: order.instructions,
    freight: order.freight,
    tracking: order.tracking,
    returnTracking: order.returnTracking,
    sentAt: order.sentAt,
    acceptedAt: order.acceptedAt,
    promisedOn: order.promisedOn,
    promises: promiseViews(order.promises),
    redoOf: redoOf && { orderId: redoOf.id, number: redoOf.number, cost: order.redoCost },
    heads: order.visits.map((line) => headOf(order, line)),
    may,
    ...(may.cost ? { cost: { workMinor: order.costMinor, freightMinor: order.freightMinor } } : {}),
  }
}

function headOf(order: WholeOrder, line: WholeOrder['visits'][number]): OrderHead {
  const { visit } = line
  const route = visit.steps.map(routeStepOf)
  const confirmed = stepsOf(line.confirmed)
  const own = (id: StepId) => route.find((step) => step.stepId === id && step.orderId === null)
  const redo = order.redos.find((other) => other.visits.some((head) => head.visitId === line.visitId))
  const angle = own('angle-cut')
  const short = confirmed.includes('angle-cut') && angle?.state === 'do again' ? reasonText(angle.reason) : ''
  return {
    ...orderedHead(visit),
    pairId: visit.pairId,
    angleIn: line.angleIn,
    flatIn: line.flatIn,
    receivedAt: line.receivedAt,
    steps: stepsOf(order.scope).map((id) => ({
      id,
      label: labelOf(visit.steps, id),
      state: confirmed.includes(id) ? 'confirmed' : own(id)?.state === 'done' ? 'done here' : 'open',
    })),
    marksTyped: line.marksTyped,
    marksRead: line.marksRead,
    rejected: line.rejectedAt === null ? null : { why: line.rejectedWhy, cost: line.redoCost },
    redo: redo ? { orderId: redo.id, number: redo.number } : null,
    short: line.rejectedAt === null ? short : '',
    frozen: visit.releases.length > 0,
  }
}
