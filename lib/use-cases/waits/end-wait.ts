import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { waitById } from '@/lib/data/waits'
import { endPartsWait } from '@/lib/dossier/end-parts-wait'
import { write, type Moment } from '@/lib/data/write'
import type { endWaitSchema } from '@/lib/schemas/visit'

/** The parts are here. */
export async function endWait(actor: Actor, input: z.output<typeof endWaitSchema>, moment: Moment) {
  must(allow(actor, 'wait.end'))
  return write(actor, moment, async (ctx) => {
    const wait = await waitById(ctx.tx, input.waitId)
    await endPartsWait(ctx, wait, input.version)
    return { visitId: wait.visitId }
  })
}
