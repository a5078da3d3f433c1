import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { customerById, jobsOfCustomer } from '@/lib/data/customer-record'
import { putCustomerTexts } from '@/lib/data/find-texts'
import { newId } from '@/lib/data/ids'
import { mergedJobs } from '@/lib/data/stored/records'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { MergeCustomers } from '@/lib/schemas/customer'
import { refuseEnded } from './change-customer'

/**
 * Two records of one person become one: the jobs go over, and with them heads, findings, money and calls. The record that
 * ends stays as it was, is found under the other one, and comes back when the owner undoes it.
 */
export async function mergeCustomers(actor: Actor, input: MergeCustomers, moment: Moment): Promise<{ intoId: string }> {
  must(allow(actor, 'customer.change'))
  const { fromId, intoId, reason } = input
  if (fromId === intoId) throw new RefusedError({ code: 'invalid', message: 'Choose another customer: these are one.' })
  return write(actor, moment, async (ctx) => {
    for (const [id, version] of [
      [fromId, input.fromVersion],
      [intoId, input.intoVersion],
    ] as const) {
      const { contact, mergedIntoId } = await customerById(ctx.tx, id)
      refuseEnded({ mergedIntoId, blankedAt: contact.blankedAt })
      const data = { version: { increment: 1 }, ...(id === fromId ? { mergedIntoId: intoId } : {}) }
      conflictUnless(await ctx.tx.customer.updateMany({ where: { id, version }, data }), contact.name)
    }
    const jobs = await jobsOfCustomer(ctx.tx, fromId)
    await ctx.tx.job.updateMany({ where: { customerId: fromId }, data: { customerId: intoId } })
    await ctx.tx.customerMerge.create({
      data: {
        ...{ id: newId(ctx.now), fromId, intoId, reason, at: ctx.now, byId: ctx.actor.personId },
        jobIds: mergedJobs.write(jobs.map(({ id }) => id)),
      },
    })
    await putCustomerTexts(ctx.tx, [fromId, intoId])
    const changes = { reason, jobs: jobs.map(({ number }) => number) }
    ctx.audit({ action: 'customer.merge', subjectId: intoId, changes: { ...changes, mergedId: fromId } })
    return { intoId }
  })
}
