import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { knownHeads } from '@/lib/data/known-heads'
import { shopOf } from '@/lib/data/shop'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import { loadDossier } from '@/lib/dossier/dossier'
import { findStep } from '@/lib/dossier/find-step'
import { refreshRoute } from '@/lib/dossier/refresh'
import type { UndoHandOverInput } from '@/lib/schemas/ordinary'

const step = { stepId: 'hand-over', occurrence: '', orderId: null } as const

/**
 * The owner takes back a hand-over on the day it was made: the head is here again, as it was before. Who took it stays in the
 * readings of that step; a payment that was taken with it stays too and is voided by itself.
 */
export async function undoHandOver(actor: Actor, input: UndoHandOverInput, moment: Moment): Promise<{ tag: string }> {
  must(allow(actor, 'visit.undo-hand-over'))
  return write(actor, moment, async (ctx) => {
    const { visit, route, label } = await loadDossier(ctx.tx, input.visitId)
    const refused = (message: string) => new RefusedError({ code: 'wrong-state', message })
    if (!visit.handOver) throw refused(`${label} was not handed over.`)
    const { timeZone } = await shopOf(ctx.tx)
    if (dayIn(timeZone, visit.handOver.at) !== dayIn(timeZone, ctx.now)) {
      throw refused('A hand-over can be taken back on the same day only. Book a new job for this head.')
    }
    const newest = (await knownHeads(ctx.tx, [visit.headId])).get(visit.headId)?.visit
    if (newest && newest.id !== visit.id) throw refused(`${label} is on job ${newest.jobNumber} already.`)
    await bumpVisit(ctx.tx, visit)
    await ctx.tx.handOver.delete({ where: { visitId: visit.id } })
    await addEvent(ctx, visit.id, 'undo', findStep(route, step), { note: input.reason })
    ctx.audit({
      action: 'visit.undo-hand-over',
      subjectId: visit.id,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason },
    })
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { tag: label }
  })
}
