import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { addFoundWork, findingById, updateFinding } from '@/lib/data/findings'
import { shopOf } from '@/lib/data/shop'
import { bumpVisit, refreshRoute, visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { AnswerFindingInput } from '@/lib/schemas/job'
import { refuseReleased } from '../visits/refuse-closed'
import { askedOf } from './asked-of'

/** The customer's yes or no. Yes adds the work to the head and the price to the job; no stays on record as declined. */
export async function answerFinding(
  actor: Actor,
  input: AnswerFindingInput,
  moment: Moment,
): Promise<{ id: string }> {
  must(allow(actor, 'finding.ask'))
  return write(actor, moment, async (w) => {
    const finding = await findingById(w.tx, input.findingId)
    const visit = await visitById(w.tx, finding.visitId)
    refuseReleased(visit)
    const asked = askedOf(w, input, (await shopOf(w.tx)).currencyExponent)
    const askedAt = finding.askedAt ?? asked.askedAt
    const answered = { answer: input.answer, answeredAt: w.now, answeredBy: input.answeredBy }
    await updateFinding(w, finding.id, input.version, { ...asked, askedAt, ...answered })
    await bumpVisit(w.tx, visit)
    if (input.answer === 'yes') {
      const added = { work: input.addsWork, priceMinor: asked.priceMinor, taxBasisPoints: input.tax }
      await addFoundWork(w, finding, visit.jobId, added)
    }
    w.audit({
      action: 'finding.answer',
      subject: 'finding',
      subjectId: finding.id,
      jobId: visit.jobId,
      visitId: visit.id,
      changes: { answer: input.answer, priceMinor: asked.priceMinor, addsWork: asked.addsWork },
    })
    await refreshRoute(w.tx, visit.id, w.now)
    return { id: finding.id }
  })
}
