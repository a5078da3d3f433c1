import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Tx } from './db'
import { refreshRoute } from './visits'

const ended = ['handed over', 'returned as is', 'scrapped']

/** Rewrites the routes of the heads still here: for a change that reaches them all, of limits or of a casting record. */
export async function refreshOpenVisits(tx: Tx, where: Prisma.VisitWhereInput, now: Date): Promise<void> {
  const visits = await tx.visit.findMany({
    where: { AND: [where, { NOT: { place: { whereabouts: { in: ended } } } }] },
    select: { id: true },
  })
  for (const visit of visits) await refreshRoute(tx, visit.id, now)
}
