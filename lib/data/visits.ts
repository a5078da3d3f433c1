import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { detailOf } from '@/lib/core/route/step-detail'
import { computeRoute } from '@/lib/core/route/compute-route'
import type { EventKind, RouteFacts, RouteStep, Whereabouts } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import { whereabouts } from '@/lib/core/route/whereabouts'
import type { Db, Reader, Tx } from './db'
import { routeFacts, visitInclude, type FactSettings, type VisitRecord } from './facts'
import { settingsAt } from './settings'
import { conflictUnless, type Write } from './write'

export type VisitWithRoute = {
  readonly visit: VisitRecord
  readonly facts: RouteFacts
  readonly route: readonly RouteStep[]
}

const notFound = (): never => {
  throw new RefusedError({ code: 'not-found', message: 'There is no such head here.' })
}

export async function visitById(reader: Reader, id: string): Promise<VisitRecord> {
  const visit = await reader.visit.findUnique({ where: { id }, include: visitInclude })
  return visit ?? notFound()
}

/** The visit, its facts and the route computed from them. */
export async function visitWithRoute(reader: Reader, id: string): Promise<VisitWithRoute> {
  const visit = await visitById(reader, id)
  return withRoute(visit, (await settingsAt(reader, visit.rulesVersion)).values)
}

export function withRoute(visit: VisitRecord, settings: FactSettings): VisitWithRoute {
  const facts = routeFacts(visit, settings)
  return { visit, facts, route: computeRoute(facts) }
}

/** All visits of a job, in their order. */
export async function visitsOfJob(reader: Reader, jobId: string): Promise<VisitRecord[]> {
  return reader.visit.findMany({ where: { jobId }, include: visitInclude, orderBy: { position: 'asc' } })
}

/** Takes the visit's lock version forward; refused when somebody changed the visit since `version` was read. */
export async function bumpVisit(tx: Tx, visit: { id: string; version: number }): Promise<void> {
  const changed = await tx.visit.updateMany({
    where: { id: visit.id, version: visit.version },
    data: { version: { increment: 1 } },
  })
  conflictUnless(changed, 'this head')
}

/** Appends to the visit's log and returns the event's sequence number. */
export async function addEvent(
  ctx: Write,
  visitId: string,
  kind: EventKind,
  step: StepKey | null,
  more: { note?: string; orderId?: string } = {},
): Promise<number> {
  const event = await ctx.tx.visitEvent.create({
    data: {
      visitId,
      kind,
      stepId: step?.stepId ?? null,
      occurrence: step?.occurrence ?? '',
      orderId: step?.orderId ?? more.orderId ?? null,
      note: more.note ?? '',
      at: ctx.now,
      byId: ctx.actor.personId,
      settingsVersion: ctx.settingsVersion,
    },
  })
  return event.seq
}

/** Where the head is, from the facts. */
export const whereaboutsOf = (visit: VisitRecord, facts: RouteFacts, route: readonly RouteStep[]): Whereabouts =>
  whereabouts(facts, {
    arrived: route.some((step) => step.stepId === 'check-in' && (step.state === 'done' || step.state === 'waived')),
    onOrder: facts.onOrder === true,
    released: visit.releases.length > 0,
    handedOver: visit.handOver !== null,
    returnedAsIs: visit.returned !== null,
    scrapped: visit.scrappedAt !== null,
  })

/** A row of the projection as a route step again. */
export function routeStepOf(row: {
  stepId: string
  occurrence: string
  orderKey: string
  label: string
  station: string
  state: string
  detail: string
}): RouteStep {
  return {
    ...detailOf(row.detail),
    stepId: row.stepId,
    occurrence: row.occurrence,
    orderId: row.orderKey === '' ? null : row.orderKey,
    label: row.label,
    station: row.station,
    state: row.state,
  } as RouteStep
}

export async function visitIdOfTag(
  client: Db,
  tag: string,
): Promise<{ headId: string; visitId: string | null } | null> {
  const assignment = await client.tagAssignment.findFirst({
    where: { number: tag.trim().toUpperCase() },
    orderBy: [{ from: 'desc' }],
    include: { head: { include: { visits: { orderBy: { createdAt: 'desc' }, take: 1, select: { id: true } } } } },
  })
  if (!assignment) return null
  return { headId: assignment.headId, visitId: assignment.head.visits[0]?.id ?? null }
}
