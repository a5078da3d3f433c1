import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { repromiseSchema } from '@/lib/schemas/outside'
import { addPromise } from './send-outside'

/** The vendor gave another day. Every promise stays on record. */
export async function repromise(actor: Actor, input: z.output<typeof repromiseSchema>, moment: Moment) {
  must(allow(actor, 'outside.send'))
  return write(actor, moment, async (w) => {
    const changed = await w.tx.outsideOrder.updateMany({
      where: { id: input.orderId, version: input.version },
      data: { promisedOn: input.promisedOn, acceptedAt: w.now, version: { increment: 1 } },
    })
    conflictUnless(changed, 'this outside order')
    await addPromise(w, input.orderId, input.promisedOn, input.note)
    w.audit({
      action: 'repromise',
      subject: 'outside-order',
      subjectId: input.orderId,
      changes: { promisedOn: input.promisedOn },
    })
    return { promisedOn: input.promisedOn }
  })
}
