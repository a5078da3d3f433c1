import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { findingById, updateFinding, type Asked, type FindingRecord } from '@/lib/data/findings'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { write, type Moment } from '@/lib/data/write'
import type { AskFindingInput } from '@/lib/schemas/finding'
import { sendByItself } from '@/lib/dossier/messages/send-by-itself'
import { refuseUnknownWork } from '@/lib/dossier/refuse-unknown-work'
import { askedOf } from './asked-of'

/** Writes down what the customer was asked; the answer is still to come. */
export async function askFinding(actor: Actor, input: AskFindingInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'finding.ask'))
  return write(actor, moment, async (ctx) => {
    const finding = await findingById(ctx.tx, input.findingId)
    await refuseUnknownWork(ctx.tx, finding.visit, input.addsWork)
    const asked = askedOf(ctx, input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    await updateFinding(ctx, finding.id, input.version, asked)
    ctx.audit({
      action: 'finding.ask',
      subjectId: finding.id,
      jobId: finding.visit.jobId,
      visitId: finding.visitId,
      changes: {
        priceMinor: asked.priceMinor,
        taxName: asked.taxName,
        taxMillionths: asked.taxMillionths,
        addsWork: asked.addsWork,
        how: asked.askedHow,
      },
    })
    if (isNews(finding, asked)) await sendByItself(ctx, 'question', finding.visit.jobId, finding.id)
    return { id: finding.id }
  })
}

/** Asked for the first time, or on other terms: the same question is not sent twice. */
const isNews = (before: FindingRecord, asked: Asked): boolean =>
  before.askedAt === null ||
  (['priceMinor', 'taxName', 'taxMillionths', 'addsWork'] as const).some((term) => before[term] !== asked[term])
