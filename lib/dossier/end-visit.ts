import { RefusedError } from '@/lib/core/errors'
import { inShort } from '@/lib/core/route/completeness'
import type { Whereabouts } from '@/lib/core/route/types'
import { returnedNotDone } from '@/lib/data/stored/records'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import type { Write } from '@/lib/data/write'
import { lackText } from '@/lib/words/lacks'
import type { Dossier } from './dossier'
import { gapsOf } from './gaps'
import { refuseClosed } from './refuse-closed'
import { refreshRoute } from './refresh'
import { whereaboutsOf } from './whereabouts-of'

/** A head goes back without further work: the paper lists what was not done. */
export async function returnHead(ctx: Write, found: Dossier, reason: string): Promise<readonly string[]> {
  const { visit } = found
  refuseClosed(visit)
  await bumpVisit(ctx.tx, visit)
  const notDone = inShort(gapsOf(found)).map((gap) => lackText(gap.lack))
  await ctx.tx.returnedAsIs.create({
    data: {
      visitId: visit.id,
      reason,
      notDone: returnedNotDone.write(notDone),
      at: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  await addEvent(ctx, visit.id, 'return-as-is', null, { note: reason })
  ctx.audit({
    action: 'visit.return-as-is',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { reason, notDone },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return notDone
}

const notHere: readonly Whereabouts[] = ['expected', 'on order']

/**
 * A head's work on its job ends before it is done: one that is here goes back as it is, one that never came is taken off.
 * Refused while it is at a vendor or on a supply order, and once it is released.
 */
export async function endVisit(ctx: Write, found: Dossier, reason: string): Promise<'returned' | 'taken off'> {
  const { visit, label } = found
  refuseClosed(visit)
  const where = whereaboutsOf(found)
  const refused = (message: string) => new RefusedError({ code: 'wrong-state', message })
  if (where === 'away') throw refused(`${label} is at a vendor. Receive it first.`)
  if (visit.releases.length > 0) throw refused(`${label} is released. Hand it over.`)
  if (!notHere.includes(where)) {
    await returnHead(ctx, found, reason)
    return 'returned'
  }
  const coming = await ctx.tx.supplyHead.findFirst({
    where: { visitId: visit.id, arrivedAt: null, line: { order: { arrivedAt: null, endedAt: null } } },
    select: { line: { select: { order: { select: { number: true } } } } },
  })
  if (coming)
    throw refused(`${label} is on supply order ${coming.line.order.number}. Cancel the remainder of it first.`)
  await bumpVisit(ctx.tx, visit)
  await ctx.tx.visit.update({ where: { id: visit.id }, data: { takenOffAt: ctx.now, takenOffWhy: reason } })
  ctx.audit({
    action: 'visit.take-off',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { reason },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return 'taken off'
}
