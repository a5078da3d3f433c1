import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { customerById, jobsOfCustomer, mergeById } from '@/lib/data/customer-record'
import { putCustomerTexts } from '@/lib/data/find-texts'
import { mergedJobs } from '@/lib/data/stored/records'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { UndoMerge } from '@/lib/schemas/customer'

/** The jobs that went over go back, and the record with them; what was booked since stays where it is. */
export async function undoMerge(actor: Actor, input: UndoMerge, moment: Moment): Promise<{ customerId: string }> {
  must(allow(actor, 'customer.unmerge'))
  return write(actor, moment, async (ctx) => {
    const merge = await mergeById(ctx.tx, input.mergeId)
    const { id, fromId, intoId } = merge
    const into = await customerById(ctx.tx, intoId)
    if (into.mergedIntoId !== null || into.contact.blankedAt) {
      const message = `${into.contact.name} was merged or removed since. Undo that first, if it can be undone.`
      throw new RefusedError({ code: 'wrong-state', message })
    }
    const undone = { undoneAt: ctx.now, undoneById: ctx.actor.personId }
    const changed = await ctx.tx.customerMerge.updateMany({ where: { id, undoneAt: null }, data: undone })
    conflictUnless(changed, 'this merge')
    const jobIds = mergedJobs.read(merge.jobIds, id)
    const jobs = await jobsOfCustomer(ctx.tx, intoId, jobIds)
    const back = { id: { in: jobs.map((job) => job.id) } }
    await ctx.tx.job.updateMany({ where: back, data: { customerId: fromId } })
    await ctx.tx.customer.update({ where: { id: fromId }, data: { mergedIntoId: null, version: { increment: 1 } } })
    await ctx.tx.customer.update({ where: { id: intoId }, data: { version: { increment: 1 } } })
    await putCustomerTexts(ctx.tx, [fromId, intoId])
    const changes = { jobs: jobs.map(({ number }) => number), mergedId: fromId }
    ctx.audit({ action: 'customer.unmerge', subjectId: intoId, changes })
    return { customerId: fromId }
  })
}
