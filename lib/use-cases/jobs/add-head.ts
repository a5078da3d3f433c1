import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { isWorkId } from '@/lib/core/route/step-ids'
import { headsTyped, refuseAlike } from '@/lib/data/alike'
import { jobById } from '@/lib/data/jobs'
import { write, type Moment } from '@/lib/data/write'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { hasLeft } from '@/lib/dossier/has-left'
import { refreshRoute } from '@/lib/dossier/refresh'
import type { AddHeadInput } from '@/lib/schemas/ordinary'
import { AllWrong } from './all-wrong'
import { bookHeads, checkHeads, type BookedVisit } from './book-heads'

/** Adds a head to a job that is under way: with the work and the target of the heads of its casting, or else of the first one. */
export async function addHead(actor: Actor, input: AddHeadInput, moment: Moment): Promise<BookedVisit> {
  must(allow(actor, 'job.change'))
  return write(actor, moment, async (ctx) => {
    const job = await jobById(ctx.tx, input.jobId)
    const heads = await loadDossiers(ctx.tx, { jobId: job.id })
    if (heads.every(({ visit }) => hasLeft(visit))) {
      const message = 'Every head of this job has left. Book a new job.'
      throw new RefusedError({ code: 'wrong-state', message })
    }
    const wrong = new AllWrong()
    await checkHeads(ctx.tx, input.heads, wrong)
    wrong.refuse()
    await refuseAlike(ctx.tx, { customer: onRecord(job.customerId), heads: headsTyped(input.heads) }, input.notThese)
    const castingId = input.heads[0]?.castingId || null
    const like = heads.find(({ visit }) => visit.head.castingId === castingId) ?? heads[0]
    const pairs = new Map(heads.map(({ visit }) => [visit.pair.castingId, visit.pairId]))
    const [booked] = await bookHeads(
      ctx,
      job,
      { heads: input.heads, ordered: like ? orderedOf(like) : [], targetCc: like ? targetOf(like) : null },
      { pairs, position: Math.max(...heads.map(({ visit }) => visit.position)) },
    )
    if (!booked) throw new RefusedError({ code: 'failed', message: 'The head was not added.' })
    ctx.audit({
      action: 'job.add-head',
      subjectId: job.id,
      jobId: job.id,
      changes: {
        tag: booked.tag,
        reason: input.reason,
        ...(input.notThese.heads.length > 0 && { notThese: input.notThese }),
      },
    })
    await refreshRoute(ctx.tx, booked.visitId, ctx.now)
    return booked
  })
}

/** The job's customer is known: only the head is asked about. */
const onRecord = (id: string) => ({ id, name: '', phone: '', email: '' })

const orderedOf = ({ visit }: Dossier) =>
  visit.ordered.flatMap(({ work, note, endedAt, findingId }) =>
    endedAt === null && findingId === null && isWorkId(work) ? [{ work, note }] : [],
  )

const targetOf = ({ visit: { targetCc, targetText, targetUnit } }: Dossier) =>
  targetCc === null ? null : { value: targetCc, text: targetText, unit: targetUnit }
