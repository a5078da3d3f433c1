import type { z } from 'zod'
import { tickAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { addEventRow } from '@/lib/data/visits'
import { lastSeq } from '@/lib/dossier/find-step'
import { project } from '@/lib/dossier/refresh'
import { withEvent } from '@/lib/dossier/with-event'
import { write, type Moment } from '@/lib/data/write'
import type { startStepSchema } from '@/lib/schemas/visit'
import { loadStepForChange, refuseAway } from './step-change'

/** Says that somebody is at it. Starting what is started already changes nothing. */
export async function startStep(actor: Actor, input: z.output<typeof startStepSchema>, moment: Moment) {
  return write(actor, moment, async (ctx) => {
    const { step, ...dossier } = await loadStepForChange(ctx, input, tickAction)
    const { visit } = dossier
    refuseAway(dossier.facts)
    if (step.state === 'started') return { label: step.label, seen: lastSeq(visit, input.step) }
    const event = await addEventRow(ctx, visit.id, 'start', step)
    ctx.audit({
      action: 'step.start',
      subjectId: step.stepId,
      visitId: visit.id,
      jobId: visit.jobId,
    })
    await project(ctx.tx, withEvent(dossier, event), ctx.now)
    return { label: step.label, seen: event.seq }
  })
}
