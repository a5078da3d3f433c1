import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { figureKey } from '@/lib/core/expected/types'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { sameKey } from '@/lib/core/route/keys'
import type { VisitRecord } from '@/lib/data/visit-records'
import { bumpVisit } from '@/lib/data/visits'
import { readingConditions } from '@/lib/data/stored/records'
import { checkReadings } from '@/lib/dossier/check-readings'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { addCorrection, type Correction } from '@/lib/dossier/add-correction'
import { holdByItself } from '@/lib/dossier/hold-by-itself'
import { project } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { correctReadingSchema } from '@/lib/schemas/visit'
import { refusePhotoInWords } from './photo-in-words'

type Input = z.output<typeof correctReadingSchema>

/**
 * Adds a correction: a new value in the place of the old, or the old withdrawn. The old one stays on record. Only the
 * answer that stands now can be corrected.
 */
export async function correctReading(actor: Actor, input: Input, moment: Moment) {
  must(allow(actor, 'reading.correct'))
  return write(actor, moment, async (ctx) => {
    const found = await loadDossier(ctx.tx, input.visitId)
    const { visit, readings } = found
    const standing = readings.find((reading) => reading.id === input.readingId)
    if (!standing) {
      throw new RefusedError({
        code: 'conflict',
        message: 'Someone else corrected or withdrew this reading. Reload the page.',
      })
    }
    refuseUnseenPhoto(visit, standing, input)
    await bumpVisit(ctx.tx, visit)
    await addCorrection(ctx, visit, standing, input, await heldAgainst(ctx, found, standing, input))
    const after = await holdByItself(ctx, await loadDossier(ctx.tx, visit.id), standing.step.stepId)
    await project(ctx.tx, after.dossier, ctx.now)
    return { kind: standing.kind, point: standing.point }
  })
}

/** "Taken" in the place of a reason why there is no photo is as true as the photo. */
function refuseUnseenPhoto(visit: VisitRecord, { kind, step }: EffectiveReading, input: Correction): void {
  if (input.correction === 'withdraw') return
  refusePhotoInWords(visit, step, [{ kind, text: input.text }])
}

/** A correction is held against what is known like any other reading; '' when it is likely. */
async function heldAgainst(ctx: Write, found: Dossier, standing: EffectiveReading, input: Input): Promise<string> {
  const step = found.route.find((one) => sameKey(one, standing.step))
  if (input.correction === 'withdraw' || !step) return ''
  const { kind, point, conditions, setId } = standing
  const readings = [{ kind, point, text: input.text, notTaken: null, again: input.again }]
  const entry = { readings, instrumentId: null, conditions: readingConditions.read(conditions, setId), takenAt: null }
  try {
    return (await checkReadings(ctx.tx, without(found, standing), step, entry)).get(figureKey(kind, point)) ?? ''
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error
    throw new RefusedError({ ...error.refusal, fields: { text: error.refusal.message } })
  }
}

/** What is corrected is no evidence for what takes its place. */
const without = (found: Dossier, { id }: EffectiveReading): Dossier => ({
  ...found,
  readings: found.readings.filter((reading) => reading.id !== id),
  newest: found.newest.filter((reading) => reading.id !== id),
})
