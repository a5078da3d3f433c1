import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { jobOfHeadHere } from '@/lib/data/jobs'
import { takeOffTag as takeOff } from '@/lib/data/tags'
import { write, type Moment } from '@/lib/data/write'
import type { takeOffTagSchema } from '@/lib/schemas/tag'
import { lockHead } from './lock-head'

/** Takes the tag off a head that has left, so that the plate may be used again. The number still finds the head. */
export async function takeOffTag(
  actor: Actor,
  input: z.output<typeof takeOffTagSchema>,
  moment: Moment,
): Promise<{ readonly tag: string }> {
  must(allow(actor, 'head.tag'))
  return write(actor, moment, async (ctx) => {
    const { worn } = await lockHead(ctx, input)
    if (worn === null) throw new RefusedError({ code: 'wrong-state', message: 'This head has no tag.' })
    const number = await jobOfHeadHere(ctx.tx, input.headId)
    if (number !== null) {
      throw new RefusedError({
        code: 'wrong-state',
        message: `This head is still here, on job ${number} and needs its tag. Remove the tag after hand-over. If the tag is lost, assign another number.`,
        gaps: [{ message: `Job ${number}`, href: `/jobs/${number}` }],
      })
    }
    await takeOff(ctx, input.headId)
    ctx.audit({
      action: 'head.tag',
      subjectId: input.headId,
      changes: { was: worn, now: null, reason: input.reason },
    })
    return { tag: worn }
  })
}
