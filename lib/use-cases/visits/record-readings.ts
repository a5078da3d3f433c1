import type { z } from 'zod'
import { readAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { loadDossier } from '@/lib/dossier/dossier'
import { holdByItself } from '@/lib/dossier/hold-by-itself'
import { project } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
import type { recordReadingsSchema } from '@/lib/schemas/visit'
import { addReadings } from '@/lib/dossier/add-readings'
import { answerRepeats } from '@/lib/dossier/answer-repeats'
import { checkReadings } from '@/lib/dossier/check-readings'
import { notYetRead } from '@/lib/dossier/already-read'
import { lastSeq } from '@/lib/dossier/find-step'
import { refuseFlowWithoutPressure } from './flow-without-pressure'
import { refusePhotoInWords } from './photo-in-words'
import { refuseUnchecked } from './refuse-unchecked'
import { loadStepForChange } from './step-change'

export type Recorded = {
  readonly written: number
  readonly seen: number
  /** Why the head went on hold with it; empty: it did not. */
  readonly held: readonly string[]
}

/** Keeps readings without ticking the step: half the chambers now, the rest after lunch. */
export async function recordReadings(
  actor: Actor,
  input: z.output<typeof recordReadingsSchema>,
  moment: Moment,
): Promise<Recorded> {
  return write(actor, moment, async (ctx) => {
    const { step, ...before } = await loadStepForChange(ctx, input, readAction)
    const { visit } = before
    refusePhotoInWords(visit, step, input.entry.readings)
    refuseFlowWithoutPressure(input.entry)
    refuseUnchecked(before, step, actor.personId, { readings: input.entry.readings, ticks: false })
    const sent = notYetRead(visit, { ...input, personId: actor.personId })
    const { entry, corrected } = await answerRepeats(ctx, before, step, sent)
    const confirmed = await checkReadings(ctx.tx, before, step, sent)
    const written = corrected + (await addReadings(ctx, visit, step, entry, confirmed))
    const { dossier: after, held } = await holdByItself(ctx, await loadDossier(ctx.tx, visit.id), step.stepId)
    await project(ctx.tx, after, ctx.now)
    return { written, seen: lastSeq(after.visit, input.step), held }
  })
}
