import type { z } from 'zod'
import { tickAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError } from '@/lib/core/errors'
import { freeUndoMinutes } from '@/lib/core/route/free-undo'
import { addEventRow } from '@/lib/data/visits'
import { project } from '@/lib/dossier/refresh'
import { withEvent } from '@/lib/dossier/with-event'
import { write, type Moment } from '@/lib/data/write'
import type { undoTickSchema } from '@/lib/schemas/visit'
import { loadStepForChange } from './step-change'

/** Takes a tick back. The readings stay: they are what was measured, whatever became of the step. */
export async function undoTick(actor: Actor, input: z.output<typeof undoTickSchema>, moment: Moment) {
  return write(actor, moment, async (ctx) => {
    const { step, ...dossier } = await loadStepForChange(ctx, input, tickAction)
    const { visit } = dossier
    if (step.doneSeq === null) {
      throw new RefusedError({ code: 'wrong-state', message: 'This step is not ticked.' })
    }
    if (step.state === 'waived') {
      const message = 'The owner waived this step. Do the step, then tick it.'
      throw new RefusedError({ code: 'wrong-state', message })
    }
    const tick = visit.events.find((event) => event.seq === step.doneSeq)
    const minutes = tick ? (ctx.now.getTime() - tick.at.getTime()) / 60_000 : Infinity
    if (minutes > freeUndoMinutes && input.reason === '') {
      const message = 'Enter the reason: this tick is more than 10 minutes old.'
      throw new RefusedError({ code: 'invalid', message, fields: { reason: message } })
    }
    const event = await addEventRow(ctx, visit.id, 'undo', step, { note: input.reason })
    ctx.audit({
      action: 'step.untick',
      subjectId: step.stepId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { reason: input.reason },
    })
    await project(ctx.tx, withEvent(dossier, event), ctx.now)
    return { label: step.label, seen: event.seq }
  })
}
