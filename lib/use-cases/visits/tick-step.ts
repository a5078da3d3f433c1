import type { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import { tickAction } from '@/lib/core/access/can'
import { canTick } from '@/lib/core/route/can-tick'
import { fixesOf } from '@/lib/core/route/fixes'
import { addEvent, visitWithRoute } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { tickStepSchema } from '@/lib/schemas/visit'
import { addReadings } from '@/lib/dossier/add-readings'
import { refusePhotoInWords } from './photo-in-words'
import { loadStepForChange } from './step-change'
import { unwrapWithFixes } from '@/lib/dossier/where-to'

export type Ticked = { readonly label: string; readonly warnings: readonly string[]; readonly seen: number }

/**
 * Ticks a step, with the readings entered at the same go. A step that owes readings is not ticked without them: then
 * nothing of the go is kept, and the message names what is missing.
 */
export async function tickStep(actor: Actor, input: z.output<typeof tickStepSchema>, moment: Moment): Promise<Ticked> {
  return write(actor, moment, async (ctx) => {
    const { visit, step, facts } = await loadStepForChange(ctx, input, tickAction)
    refusePhotoInWords(visit, step, input.entry?.readings ?? [])
    const wrote = input.entry ? await addReadings(ctx, visit.id, step, input.entry) : 0
    const now = wrote > 0 ? (await visitWithRoute(ctx.tx, visit.id)).facts : facts
    const { warnings } = unwrapWithFixes(canTick(now, input.step), visit, () => fixesOf(now, input.step))
    const seen = await addEvent(ctx, visit.id, 'tick', step)
    ctx.audit({
      action: 'step.tick',
      subjectId: step.stepId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: input.step,
    })
    await afterTick(ctx, visit, step.stepId)
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { label: step.label, warnings, seen }
  })
}

/** Facts that a tick changes beyond the step itself: opening the chamber changes the head's chamber form for good. */
async function afterTick(
  ctx: Parameters<typeof addReadings>[0],
  visit: { headId: string },
  stepId: string,
): Promise<void> {
  if (stepId !== 'open-chamber') return
  await ctx.tx.head.update({
    where: { id: visit.headId },
    data: { chamberForm: 'opened', version: { increment: 1 } },
  })
}
