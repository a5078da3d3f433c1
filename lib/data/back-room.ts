import 'server-only'
import type { RouteStep } from '@/lib/core/route/types'
import type { Reader } from './db'
import { routeStepOf } from './visits'

const head = { select: { tags: { where: { to: null }, select: { number: true } } } } as const
const visitName = { select: { id: true, head, job: { select: { number: true } } } } as const

/** The tag a head wears now; '' when it has come off. */
const tagOf = (visit: { head: { tags: { number: string }[] } }): string => visit.head.tags[0]?.number ?? ''

export type OpenStep = { readonly visitId: string; readonly tag: string; readonly step: RouteStep }

/** Steps that somebody could do now or has begun, of heads that stand in the shop. */
export async function workableSteps(reader: Reader): Promise<OpenStep[]> {
  const rows = await reader.routeStep.findMany({
    where: {
      state: { in: ['ready', 'started', 'do again'] },
      visit: { place: { whereabouts: { in: ['in house', 'finished'] } } },
    },
    include: { visit: visitName },
  })
  return rows
    .map((row) => ({ visitId: row.visit.id, tag: tagOf(row.visit), step: routeStepOf(row) }))
    .filter(({ step }) => step.state === 'started' || step.waitsFor.length === 0)
}

/** When something was last done on each of these heads. */
export async function lastEvents(reader: Reader, visitIds: readonly string[]): Promise<Map<string, Date>> {
  const rows = await reader.visitEvent.groupBy({
    by: ['visitId'],
    where: { visitId: { in: [...new Set(visitIds)] } },
    _max: { at: true },
  })
  return new Map(rows.flatMap((row) => (row._max.at ? [[row.visitId, row._max.at] as const] : [])))
}

export type HeldHead = {
  readonly holdId: string
  readonly tag: string
  readonly jobNumber: string
  readonly reason: string
  readonly openedAt: Date
  readonly openedById: string
}

export async function heldHeads(reader: Reader): Promise<HeldHead[]> {
  const holds = await reader.hold.findMany({
    where: { decidedAt: null },
    include: { visit: visitName },
    orderBy: { openedAt: 'asc' },
  })
  return holds.map(({ id, visit, reason, openedAt, openedById }) => ({
    holdId: id,
    tag: tagOf(visit),
    jobNumber: visit.job.number,
    reason,
    openedAt,
    openedById,
  }))
}

export type WaiverLine = {
  readonly id: string
  readonly tag: string
  readonly what: string
  readonly reason: string
  readonly at: Date
  readonly byId: string
}

export async function waiversSince(reader: Reader, since: Date): Promise<WaiverLine[]> {
  const waivers = await reader.waiver.findMany({
    where: { at: { gte: since } },
    include: { visit: visitName },
    orderBy: { at: 'desc' },
  })
  return waivers.map(({ id, visit, what, reason, at, byId }) => {
    return { id, tag: tagOf(visit), what, reason, at, byId }
  })
}

/** What was read at the last measuring since then, with what the head was to come to. */
export async function finishedSince(reader: Reader, since: Date) {
  const sets = await reader.readingSet.findMany({
    where: { stepId: 'finished', recordedAt: { gte: since }, visitId: { not: null } },
    include: {
      points: true,
      visit: { select: { id: true, head, targetCc: true, targetText: true, targetUnit: true } },
    },
    orderBy: { eventSeq: 'asc' },
  })
  return sets.flatMap(({ visit, ...set }) =>
    visit === null ? [] : [{ set, visitId: visit.id, tag: tagOf(visit), target: visit }],
  )
}
