import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { mapPage, pageOfRows, rowsOfPage, type Paged } from './paging'

const ended = ['handed over', 'returned as is', 'scrapped', 'taken off']

const open = (where: Prisma.VisitWhereInput): Prisma.VisitWhereInput => ({
  AND: [where, { NOT: { place: { whereabouts: { in: ended } } } }],
})

/** Those whose route is made by an older version of the rules, and may still follow this one: a release is final. */
const behind = (version: number): Prisma.VisitWhereInput => ({
  AND: [open({ rulesVersion: { lt: version } }), { releases: { none: {} } }],
})

/** Ids of the heads still here that this is true of. */
export async function openVisitIds(reader: Reader, where: Prisma.VisitWhereInput): Promise<string[]> {
  const visits = await reader.visit.findMany({ where: open(where), select: { id: true } })
  return visits.map(({ id }) => id)
}

export const countBehind = (reader: Reader, version: number): Promise<number> =>
  reader.visit.count({ where: behind(version) })

/** A page of their ids, by job and place on it. */
export async function visitIdsBehind(reader: Reader, version: number, page: number): Promise<Paged<string>> {
  const visits = await reader.visit.findMany({
    where: behind(version),
    select: { id: true },
    orderBy: [{ job: { number: 'asc' } }, { position: 'asc' }],
    ...rowsOfPage(page),
  })
  return mapPage(pageOfRows(visits), ({ id }) => id)
}
