import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { readingSpecs } from '@/lib/core/readings/specs'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { effectiveReadings, type EffectiveReading, type VisitRecord } from '@/lib/data/facts'
import { newId } from '@/lib/data/ids'
import { addEvent, bumpVisit, refreshRoute, visitById } from '@/lib/data/visits'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { correctReadingSchema } from '@/lib/schemas/visit'
import { refusePhotoInWords } from './photo-in-words'

type Input = z.output<typeof correctReadingSchema>
type Correction = Pick<Input, 'correction' | 'text' | 'reason'>

/**
 * Adds a correction: a new value in the place of the old, or the old withdrawn. The old one stays on record. Only the
 * answer that stands now can be corrected.
 */
export async function correctReading(actor: Actor, input: Input, moment: Moment) {
  must(allow(actor, 'reading.correct'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, input.visitId)
    const standing = effectiveReadings(visit.readings).find((reading) => reading.id === input.readingId)
    if (!standing) {
      throw new RefusedError({
        code: 'conflict',
        message: 'This reading was corrected or withdrawn by somebody else. Reload to see it.',
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

/** The row of a correction, in the visit's log and in the audit. The caller holds the visit's lock and refreshes it. */
export async function addCorrection(
  ctx: Write,
  visit: Pick<VisitRecord, 'id' | 'jobId'>,
  standing: EffectiveReading,
  input: Correction,
): Promise<void> {
  const eventSeq = await addEvent(ctx, visit.id, 'read', standing.step, { note: input.reason })
  const setId = newId(ctx.now)
  const { stepId, occurrence, orderId } = standing.step
  await ctx.tx.readingSet.create({
    data: {
      id: setId,
      visitId: visit.id,
      castingId: null,
      stepId,
      occurrence,
      orderId,
      eventSeq,
      instrumentId: standing.instrumentId,
      instrumentCheckedOn: standing.instrumentCheckedOn,
      conditions: standing.conditions,
      takenAt: ctx.now,
      recordedAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  await ctx.tx.reading.create({ data: { id: newId(ctx.now), setId, ...correctionRow(standing, input) } })
  ctx.audit({
    action: 'reading.correct',
    subjectId: standing.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: {
      was: standing.text,
      now: input.correction === 'withdraw' ? null : input.text,
      reason: input.reason,
    },
  })
}

/** A row that stands in the place of another: its value as typed and read, or nothing when it is withdrawn. */
export function correctionRow(standing: EffectiveReading, input: Correction) {
  const base = {
    kind: standing.kind,
    point: standing.point,
    notTaken: null,
    correctsId: standing.id,
    correction: input.correction,
    reason: input.reason,
  }
  if (input.correction === 'withdraw') return { ...base, value: null, text: '', unit: '' }
  const spec = readingSpecs[standing.kind]
  if (input.text === '') {
    throw new RefusedError({
      code: 'invalid',
      message: 'Type what it should say.',
      fields: { text: 'Type what it should say.' },
    })
  }
  if (spec.form !== 'figure' || !spec.quantity) return { ...base, value: null, text: input.text, unit: '' }
  const parsed = must(parseFigure(input.text, spec.quantity))
  return { ...base, value: parsed.value, text: parsed.text, unit: parsed.unit }
}
