import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader, Tx } from './db'
import { visitInclude } from './facts'
import { refreshRoute } from './visits'

const ended = ['handed over', 'returned as is', 'scrapped']

const open = (where: Prisma.VisitWhereInput): Prisma.VisitWhereInput => ({
  AND: [where, { NOT: { place: { whereabouts: { in: ended } } } }],
})

/** Those whose route is made by an older version of the rules, and may still follow this one: a release is final. */
const behind = (version: number): Prisma.VisitWhereInput => ({
  AND: [open({ rulesVersion: { lt: version } }), { releases: { none: {} } }],
})

/** Rewrites the routes of the heads still here: for a change that reaches them all, such as of a casting record. */
export async function refreshOpenVisits(tx: Tx, where: Prisma.VisitWhereInput, now: Date): Promise<void> {
  const visits = await tx.visit.findMany({ where: open(where), select: { id: true } })
  for (const visit of visits) await refreshRoute(tx, visit.id, now)
}

export const countBehind = (reader: Reader, version: number): Promise<number> =>
  reader.visit.count({ where: behind(version) })

export const visitsBehind = (reader: Reader, version: number) =>
  reader.visit.findMany({
    where: behind(version),
    include: visitInclude,
    orderBy: [{ job: { number: 'asc' } }, { position: 'asc' }],
  })
