import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { findingById } from '@/lib/data/findings'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import type { AnswerFindingInput } from '@/lib/schemas/finding'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { refuseUnknownWork } from '@/lib/dossier/refuse-unknown-work'
import { askedOf } from './asked-of'
import { takeAnswer } from './take-answer'

/** The customer's yes or no, as the counter heard it. */
export async function answerFinding(actor: Actor, input: AnswerFindingInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'finding.ask'))
  return write(actor, moment, async (ctx) => {
    const finding = await findingById(ctx.tx, input.findingId)
    const visit = await visitById(ctx.tx, finding.visitId)
    refuseReleased(visit)
    await refuseUnknownWork(ctx.tx, visit, input.addsWork)
    const asked = askedOf(ctx, input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    const said = {
      answer: input.answer,
      answeredAt: ctx.now,
      answeredBy: input.answeredBy,
      answeredLinkId: null,
    }
    const change = { ...asked, askedAt: finding.askedAt ?? asked.askedAt, ...said }
    return takeAnswer(ctx, { finding, visit, reads: input.version }, change, asked)
  })
}
