import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { effectiveReadings } from '@/lib/core/readings/effective'
import { flowSets } from '@/lib/data/flow-runs'
import { newId } from '@/lib/data/ids'
import { write, type Moment } from '@/lib/data/write'
import type { CorrectReference } from '@/lib/schemas/flow'
import { correctionRow } from '@/lib/dossier/add-correction'

/**
 * Corrects one lift of a casting's reference run, or withdraws it or the whole run. What was read stays on record beside
 * the reason; heads are held against what stands.
 */
export async function correctReference(
  actor: Actor,
  input: CorrectReference,
  moment: Moment,
): Promise<{ readonly corrected: number }> {
  must(allow(actor, 'reading.correct'))
  return write(actor, moment, async (ctx) => {
    const standing = effectiveReadings(await flowSets(ctx.tx, [], input.castingId)).filter(
      ({ setId, id }) => setId === input.runId && (input.readingId === null || id === input.readingId),
    )
    const [first] = standing
    if (!first) {
      throw new RefusedError({
        code: 'conflict',
        message: 'Someone else corrected or withdrew this. Reload the page.',
      })
    }
    const setId = newId(ctx.now)
    await ctx.tx.readingSet.create({
      data: {
        id: setId,
        visitId: null,
        castingId: input.castingId,
        stepId: 'flow',
        occurrence: 'reference',
        orderId: null,
        eventSeq: 0,
        instrumentId: null,
        conditions: first.conditions,
        takenAt: ctx.now,
        recordedAt: ctx.now,
        byId: actor.personId,
      },
    })
    await ctx.tx.reading.createMany({
      data: standing.map((reading) => ({ id: newId(ctx.now), setId, ...correctionRow(reading, input) })),
    })
    ctx.audit({
      action: 'casting.correct-flow',
      subjectId: input.castingId,
      changes: {
        run: input.runId,
        was: standing.map(({ point, text }) => [point, text]),
        now: input.correction === 'withdraw' ? null : input.text,
        reason: input.reason,
      },
    })
    return { corrected: standing.length }
  })
}
