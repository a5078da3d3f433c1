import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { angleLeftIn, flatLeftIn } from '@/lib/core/route/outside-cuts'
import type { StepId } from '@/lib/core/route/step-ids'
import { db, type Db } from '@/lib/data/db'
import { idsToSend, stepsOf, wholeOrder } from '@/lib/data/outside'
import { vendorPicks } from '@/lib/data/vendors'
import { loadDossier } from '@/lib/dossier/dossier'
import { isAccepted } from './refuse-unaccepted'
import { headLabel } from '@/lib/core/shop/tag-number'

export type Sendable = {
  readonly visitId: string
  readonly tag: string
  readonly jobNumber: string
  readonly pairId: string
  /** Newest version of the pair's plan; 0: none. */
  readonly planVersion: number
  /** Of that version; '': none. */
  readonly planId: string
  /** The customer has said yes to it. */
  readonly accepted: boolean
  /** What is left of the plan: a vendor who takes this much leaves nothing of it. */
  readonly angleIn: number
  readonly flatIn: number
  /** A rejected cut that nobody has measured: how much of it is off is not known. */
  readonly unmeasured: boolean
  /** Thickness or chambers of this head are still to be read. */
  readonly unread: boolean
  readonly steps: readonly { readonly id: StepId; readonly label: string }[]
}

export type Redo = {
  readonly orderId: string
  readonly number: string
  readonly vendorId: string
  readonly scope: readonly StepId[]
  readonly cost: string
  readonly instructions: string
}

const neverOutside: readonly StepId[] = ['check-in', 'arrival-count', 'arrival-figures', 'final', 'hand-over']

export type Asked = { readonly visitIds: readonly string[]; readonly redoOfId: string | null }

/** The heads that can go together: the asked ones and their mates, and which of their open steps could go out. */
export async function seeSending(actor: Actor, { visitIds, redoOfId }: Asked) {
  must(allow(actor, 'outside.send'))
  const client = await db()
  const redo = redoOfId === null ? null : await redoOf(client, redoOfId, visitIds)
  const heads: Sendable[] = []
  for (const id of await idsToSend(client, visitIds, redo === null)) heads.push(await sendable(client, id))
  return {
    heads,
    redo,
    mayPlan: can(actor, 'plan.make'),
    mayAccept: can(actor, 'plan.accept'),
    mayOverride: can(actor, 'plan.override'),
    vendors: await vendorPicks(client),
  }
}

async function sendable(client: Db, visitId: string): Promise<Sendable> {
  const { visit, facts, route } = await loadDossier(client, visitId)
  const open = route.filter((step) => ['to do', 'ready', 'do again'].includes(step.state) && !step.outside)
  const plan = visit.pair.plans[0]
  return {
    visitId: visit.id,
    tag: headLabel(visit),
    jobNumber: visit.job.number,
    pairId: visit.pairId,
    planVersion: plan?.number ?? 0,
    planId: plan?.id ?? '',
    accepted: isAccepted({ visit }),
    angleIn: angleLeftIn(facts),
    flatIn: flatLeftIn(facts),
    unmeasured: facts.orders.some(
      (order) => order.rejected && !order.measured && (order.angleIn > 0 || order.flatIn > 0),
    ),
    unread: open.some(({ stepId }) => stepId === 'thickness' || stepId === 'chambers'),
    steps: open
      .filter((step) => !neverOutside.includes(step.stepId) && step.stepId !== 'flow')
      .map((step) => ({ id: step.stepId, label: step.label })),
  }
}

async function redoOf(client: Db, orderId: string, visitIds: readonly string[]): Promise<Redo | null> {
  const order = await wholeOrder(client, orderId)
  const lines = order?.visits.filter((line) => visitIds.includes(line.visitId) && line.rejectedAt !== null) ?? []
  if (!order || lines.length === 0) return null
  return {
    orderId: order.id,
    number: order.number,
    vendorId: order.vendor.retiredAt === null ? order.vendorId : '',
    scope: stepsOf(order.scope),
    cost: lines[0]?.redoCost ?? '',
    instructions: `Order ${order.number} done again. ${lines.map((line) => line.rejectedWhy).join('; ')}`,
  }
}
