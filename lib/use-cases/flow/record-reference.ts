import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { castingById } from '@/lib/data/castings'
import { newId } from '@/lib/data/ids'
import { readingConditions } from '@/lib/data/stored/records'
import { write, type Moment } from '@/lib/data/write'
import type { ReferenceRun } from '@/lib/schemas/flow'
import { addPoints, pointsOf } from '@/lib/dossier/add-readings'

/** Keeps a flow run of a casting that belongs to no visit: heads of that casting are held against it. */
export async function recordReference(
  actor: Actor,
  input: ReferenceRun,
  moment: Moment,
): Promise<{ readonly setId: string }> {
  must(allow(actor, 'reading.record-bench'))
  const points = pointsOf(input.readings)
  if (points.length === 0) throw new RefusedError({ code: 'invalid', message: 'Enter the flow for at least one lift.' })
  return write(actor, moment, async (ctx) => {
    const casting = await castingById(ctx.tx, input.castingId)
    const setId = newId(ctx.now)
    await ctx.tx.readingSet.create({
      data: {
        id: setId,
        visitId: null,
        castingId: casting.id,
        stepId: 'flow',
        occurrence: 'reference',
        orderId: null,
        // Nothing of a visit comes before or after it.
        eventSeq: 0,
        instrumentId: null,
        conditions: readingConditions.write(input.conditions),
        takenAt: ctx.now,
        recordedAt: ctx.now,
        byId: actor.personId,
      },
    })
    await addPoints(ctx, setId, points)
    ctx.audit({
      action: 'casting.record-flow',
      subjectId: casting.id,
      changes: { set: setId, points: points.map((point) => [point.point, point.text, point.notTaken]) },
    })
    return { setId }
  })
}
