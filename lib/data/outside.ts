import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import { RefusedError } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/step-ids'
import type { Reader, Tx } from './db'
import { planInputs } from './stored/plan'
import { headOnOrder } from './vendor-orders'
import { conflictUnless, type Write } from './write'

const headOfVisit = { select: { ...headOnOrder, pairId: true } } as const satisfies Prisma.VisitDefaultArgs

/** Whom to tell that a promise is at risk. */
const jobWithCustomer = {
  select: { number: true, promiseOn: true, customer: { select: { contact: { select: { name: true, phone: true } } } } },
} as const

const orderInclude = {
  vendor: true,
  promises: { orderBy: { at: 'asc' } },
  visits: { include: { visit: { select: { ...headOfVisit.select, job: jobWithCustomer } } } },
} as const satisfies Prisma.OutsideOrderInclude

/** With what has become of each head's steps, and the orders before and after it. */
const wholeInclude = {
  ...orderInclude,
  redoOf: { select: { id: true, number: true } },
  redos: { select: { id: true, number: true, redoCost: true, visits: { select: { visitId: true } } } },
  visits: {
    include: { visit: { select: { ...headOfVisit.select, steps: true, releases: { select: { id: true } } } } },
    orderBy: { id: 'asc' },
  },
} as const satisfies Prisma.OutsideOrderInclude

export const wholeOrder = (reader: Reader, id: string) =>
  reader.outsideOrder.findUnique({ where: { id }, include: wholeInclude })
export type WholeOrder = NonNullable<Awaited<ReturnType<typeof wholeOrder>>>

const none = (what: string): never => {
  throw new RefusedError({ code: 'not-found', message: `There is no such ${what}.` })
}

/** Ids of steps as they are kept in one column. */
export const stepsOf = (text: string): StepId[] => text.split(',').filter(Boolean) as StepId[]

export type LineRecord = Prisma.OutsideOrderVisitGetPayload<{ include: { order: true } }>

/** One head of one order. */
export const lineOfOrder = async (tx: Tx, orderId: string, visitId: string): Promise<LineRecord> =>
  (await tx.outsideOrderVisit.findUnique({
    where: { orderId_visitId: { orderId, visitId } },
    include: { order: true },
  })) ?? none('head in this order')

export const orderToChange = async (tx: Tx, id: string) =>
  (await tx.outsideOrder.findUnique({ where: { id } })) ?? none('outside order')

export const orderToReceive = async (tx: Tx, id: string) =>
  (await tx.outsideOrder.findUnique({ where: { id }, include: { visits: true } })) ?? none('outside order')

/** Takes the order's lock forward; refused when it was changed since `version` was read. */
export async function bumpOrder(
  ctx: Write,
  order: { readonly id: string; readonly number: string },
  version: number,
  data: Prisma.OutsideOrderUpdateManyMutationInput,
): Promise<void> {
  const changed = await ctx.tx.outsideOrder.updateMany({
    where: { id: order.id, version },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, `outside order ${order.number}`)
}

/** The sink that was typed for the newest plan of a pair, as typed; '' for none. */
export async function newestChoice(reader: Reader, pairId: string): Promise<string> {
  const plan = await reader.planVersion.findFirst({
    where: { pairId },
    orderBy: { number: 'desc' },
    select: { id: true, inputs: true },
  })
  return plan === null ? '' : (planInputs.read(plan.inputs, plan.id).choice?.sinkIn?.text ?? '')
}

/** These visits in the order of their jobs, with all heads of their pairs when `wholePairs`. */
export async function idsToSend(reader: Reader, visitIds: readonly string[], wholePairs: boolean): Promise<string[]> {
  const own = { id: { in: [...visitIds] } }
  const pairs = wholePairs ? await reader.visit.findMany({ where: own, select: { pairId: true } }) : []
  const visits = await reader.visit.findMany({
    where: wholePairs ? { pairId: { in: pairs.map(({ pairId }) => pairId) } } : own,
    select: { id: true },
    orderBy: [{ jobId: 'asc' }, { position: 'asc' }],
  })
  if (visits.length === 0) throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
  return visits.map(({ id }) => id)
}
