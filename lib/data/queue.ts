import 'server-only'
import type { RouteStep } from '@/lib/core/route/types'
import type { Station } from '@/lib/core/route/step-ids'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { routeStepOf } from './visits'

const openStates = ['to do', 'ready', 'started', 'do again']
const gone = ['released', 'handed over', 'returned as is', 'scrapped']

const queueInclude = {
  visit: {
    select: {
      id: true,
      headId: true,
      pairId: true,
      position: true,
      job: { select: { number: true, promiseOn: true, urgent: true } },
      head: {
        select: { casting: { select: { name: true } }, tags: { where: { to: null }, select: { number: true } } },
      },
      place: { select: { whereabouts: true } },
    },
  },
} as const satisfies Prisma.RouteStepInclude

type Row = Prisma.RouteStepGetPayload<{ include: typeof queueInclude }>
export type StationRow = { readonly row: Row; readonly step: RouteStep }

/** Open steps of a station, of heads that are still ours to work on, in route order. */
export async function stationRows(reader: Reader, station: Station): Promise<StationRow[]> {
  const rows = await reader.routeStep.findMany({
    where: { station, state: { in: openStates }, visit: { place: { whereabouts: { notIn: gone } } } },
    include: queueInclude,
    orderBy: [{ place: 'asc' }],
  })
  return rows.map((row) => ({ row, step: routeStepOf(row) }))
}

/** How many heads are ready or started, and how many are coming, per station. */
export async function stationCounts(reader: Reader): Promise<Map<string, number>> {
  const rows = await reader.routeStep.groupBy({
    by: ['station'],
    where: { state: { in: ['ready', 'started', 'do again'] }, visit: { place: { whereabouts: { notIn: gone } } } },
    _count: { _all: true },
  })
  return new Map(rows.map((row) => [row.station, row._count._all]))
}
