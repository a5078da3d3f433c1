import { addFoundWork, updateFinding, type Answered, type Asked, type FindingRecord } from '@/lib/data/findings'
import { bumpVisit } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import type { VisitRecord } from '@/lib/data/visit-records'
import type { Author, Write } from '@/lib/data/write'

type Terms = Pick<Asked, 'priceMinor' | 'taxName' | 'taxMillionths' | 'addsWork'>

/**
 * What an answer does, whoever takes it: yes adds the work to the head and the price to the job, no stays on record as
 * declined. `reads`: the version that was answered; `change`: what is written on the finding.
 */
export async function takeAnswer(
  ctx: Write<Author>,
  { finding, visit, reads }: { finding: FindingRecord; visit: VisitRecord; reads: number },
  change: Answered | (Asked & Answered),
  terms: Terms,
  /** Why an earlier answer changed. */
  reason = '',
): Promise<{ id: string }> {
  const { priceMinor, taxName, taxMillionths, addsWork } = terms
  await updateFinding(ctx, finding.id, reads, change)
  await bumpVisit(ctx.tx, visit)
  if (change.answer === 'yes') {
    const work = addsWork.split(',').filter(Boolean)
    await addFoundWork(ctx, finding, visit.jobId, { work, priceMinor, taxName, taxMillionths })
  }
  ctx.audit({
    action: 'finding.answer',
    subjectId: finding.id,
    jobId: visit.jobId,
    visitId: visit.id,
    changes: {
      answer: change.answer,
      ...(change.answeredLinkId === null ? {} : { given: 'by link' }),
      priceMinor,
      taxName,
      taxMillionths,
      addsWork,
      ...(reason === '' ? {} : { reason }),
    },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return { id: finding.id }
}
