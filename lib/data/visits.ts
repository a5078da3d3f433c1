import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { EventKind, RouteStep, StepState } from '@/lib/core/route/types'
import type { Station, StepId, StepKey } from '@/lib/core/route/step-ids'
import type { Db, Reader, Tx } from './db'
import { keepStepTime } from './step-times'
import { stepDetail, type StepDetail } from './stored/route-step'
import { readVisits, type VisitRecord } from './visit-records'
import { conflictUnless, type Write } from './write'

/** Everything that is known of one visit. */
export async function visitById(reader: Reader, id: string): Promise<VisitRecord> {
  const { visits } = await readVisits(reader, { ids: [id] })
  const [visit] = visits
  if (visit) return visit
  throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
}

/** Takes the visit's lock version forward; refused when somebody changed the visit since `version` was read. */
export async function bumpVisit(tx: Tx, visit: { id: string; version: number }): Promise<void> {
  const changed = await tx.visit.updateMany({
    where: { id: visit.id, version: visit.version },
    data: { version: { increment: 1 } },
  })
  conflictUnless(changed, 'this head')
}

/** Appends to the visit's log, and keeps how long it took what the event ended; gives back the row. */
export async function addEventRow(
  ctx: Write,
  visitId: string,
  kind: EventKind,
  step: StepKey | null,
  more: { note?: string; orderId?: string } = {},
): Promise<VisitRecord['events'][number]> {
  const row = await ctx.tx.visitEvent.create({
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
  await keepStepTime(ctx.tx, { ...row, kind, step })
  return row
}

/** The same, for its sequence number. */
export async function addEvent(...event: Parameters<typeof addEventRow>): Promise<number> {
  return (await addEventRow(...event)).seq
}

/** A row of the projection as a route step again. */
export function routeStepOf(row: {
  visitId: string
  stepId: string
  occurrence: string
  orderKey: string
  label: string
  station: string
  state: string
  detail: string
}): RouteStep & Pick<StepDetail, 'out' | 'rework'> {
  return {
    ...stepDetail.read(row.detail, `${row.stepId} of visit ${row.visitId}`),
    stepId: row.stepId as StepId,
    occurrence: row.occurrence,
    orderId: row.orderKey === '' ? null : row.orderKey,
    label: row.label,
    station: row.station as Station,
    state: row.state as StepState,
  }
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
