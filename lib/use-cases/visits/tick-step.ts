import type { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import { tickAction } from '@/lib/core/access/can'
import { canTick } from '@/lib/core/route/can-tick'
import { fixesOf } from '@/lib/core/route/fixes'
import { addEventRow } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { project } from '@/lib/dossier/refresh'
import { withEvent } from '@/lib/dossier/with-event'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { tickStepSchema } from '@/lib/schemas/visit'
import { holdByItself } from '@/lib/dossier/hold-by-itself'
import { lastSeq } from '@/lib/dossier/find-step'
import { addReadings, nothingConfirmed } from '@/lib/dossier/add-readings'
import { answerRepeats } from '@/lib/dossier/answer-repeats'
import { checkReadings } from '@/lib/dossier/check-readings'
import { notYetRead } from '@/lib/dossier/already-read'
import { refuseFlowWithoutPressure } from './flow-without-pressure'
import { refusePhotoInWords } from './photo-in-words'
import { refuseUnchecked } from './refuse-unchecked'
import { loadStepForChange } from './step-change'
import { refuseWithFixes } from '@/lib/dossier/where-to'
import { tickRefusal, tickWarningText } from '@/lib/words/ticks'

export type Ticked = {
  readonly label: string
  readonly warnings: readonly string[]
  readonly seen: number
  /** False: what was read put the head on hold, so it is kept and the step is not ticked. */
  readonly ticked: boolean
  /** Why the head went on hold with it; empty: it did not. */
  readonly held: readonly string[]
}

/**
 * Ticks a step, with the readings entered at the same go. A step that owes readings is not ticked without them: then
 * nothing of the go is kept, and the message names what is missing. An arrival that is short, wrong or damaged, and a seat
 * that the cut has gone through, put the head on hold with it.
 */
export async function tickStep(actor: Actor, input: z.output<typeof tickStepSchema>, moment: Moment): Promise<Ticked> {
  return write(actor, moment, async (ctx) => {
    const { step, ...before } = await loadStepForChange(ctx, input, tickAction)
    const { visit } = before
    refusePhotoInWords(visit, step, input.entry?.readings ?? [])
    if (input.entry) refuseFlowWithoutPressure(input.entry)
    refuseUnchecked(before, step, actor.personId, { readings: input.entry?.readings ?? [], ticks: true })
    const { entry } = input
    const sent = entry && notYetRead(visit, { ...input, entry, personId: actor.personId })
    const answered = sent && (await answerRepeats(ctx, before, step, sent))
    const confirmed = sent ? await checkReadings(ctx.tx, before, step, sent) : nothingConfirmed
    const wrote = answered ? answered.corrected + (await addReadings(ctx, visit, step, answered.entry, confirmed)) : 0
    const now = wrote > 0 ? await loadDossier(ctx.tx, visit.id) : before
    const may = canTick(now.facts, input.step)
    const { dossier: after, held } = wrote > 0 ? await holdByItself(ctx, now, step.stepId) : { dossier: now, held: [] }
    if (!may.ok && held.length > 0 && may.refused.code === 'stop') {
      await project(ctx.tx, after, ctx.now)
      return { label: step.label, warnings: [], seen: lastSeq(after.visit, input.step), ticked: false, held }
    }
    if (!may.ok) refuseWithFixes(tickRefusal(may.refused), visit, fixesOf(now.facts, input.step))
    const event = await addEventRow(ctx, visit.id, 'tick', step)
    ctx.audit({
      action: 'step.tick',
      subjectId: step.stepId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: input.step,
    })
    await project(ctx.tx, withEvent(after, event, await formAfter(ctx, visit, step.stepId)), ctx.now)
    return { label: step.label, warnings: may.warnings.map(tickWarningText), seen: event.seq, ticked: true, held }
  })
}

/** A fact that a tick changes beyond the step itself: opening the chamber changes the head's chamber form for good. */
async function formAfter(ctx: Write, { headId, head }: Dossier['visit'], stepId: string): Promise<string> {
  if (stepId !== 'open-chamber') return head.chamberForm
  const opened = 'opened'
  await ctx.tx.head.update({ where: { id: headId }, data: { chamberForm: opened, version: { increment: 1 } } })
  return opened
}
