import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { VisitRecord } from '@/lib/data/visit-records'
import { bumpVisit } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { addCorrection, type Correction } from '@/lib/dossier/add-correction'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment } from '@/lib/data/write'
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
    const { visit, readings } = await loadDossier(ctx.tx, input.visitId)
    const standing = readings.find((reading) => reading.id === input.readingId)
    if (!standing) {
      throw new RefusedError({
        code: 'conflict',
        message: 'Someone else corrected or withdrew this reading. Reload the page.',
      })
    }
    refuseUnseenPhoto(visit, standing, input)
    await bumpVisit(ctx.tx, visit)
    await addCorrection(ctx, visit, standing, input)
    await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { kind: standing.kind, point: standing.point }
  })
}

/** "Taken" in the place of a reason why there is no photo is as true as the photo. */
function refuseUnseenPhoto(visit: VisitRecord, { kind, step }: EffectiveReading, input: Correction): void {
  if (input.correction === 'withdraw') return
  refusePhotoInWords(visit, step, [{ kind, text: input.text }])
}
