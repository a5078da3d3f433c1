import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { endOrderedLines } from '@/lib/data/booking'
import { findingById, keepEarlierAnswer } from '@/lib/data/findings'
import { endPrice, lockAccount, pricesOfFinding } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { taxOf } from '@/lib/data/tax-rates'
import { visitById } from '@/lib/data/visits'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { VisitRecord } from '@/lib/data/visit-records'
import { refuseReleased } from '@/lib/dossier/refuse-closed'
import { refuseUnknownWork } from '@/lib/dossier/refuse-unknown-work'
import type { ChangeAnswerInput } from '@/lib/schemas/finding'
import { askedOf } from './asked-of'
import { takeAnswer } from './take-answer'

/**
 * The customer changed their mind, or the answer was entered wrong: the first answer stays on record with the reason. What an
 * earlier yes added comes off again: its work and its price. A price that is on an invoice stands in the way.
 */
export async function changeAnswer(actor: Actor, input: ChangeAnswerInput, moment: Moment): Promise<{ id: string }> {
  must(allow(actor, 'finding.ask'))
  return write(actor, moment, async (ctx) => {
    const finding = await findingById(ctx.tx, input.findingId)
    const visit = await visitById(ctx.tx, finding.visitId)
    refuseReleased(visit)
    if (finding.answer === null) {
      throw new RefusedError({ code: 'wrong-state', message: 'This finding has no answer yet. Record the answer.' })
    }
    await refuseUnknownWork(ctx.tx, visit, input.addsWork)
    const asked = askedOf(ctx, input, await taxOf(ctx.tx, input.tax, 'tax'), await shopOf(ctx.tx))
    if (finding.answer === 'yes') await takeBack(ctx, visit, finding.id, input.reason)
    await keepEarlierAnswer(ctx, finding, input.version, input.reason)
    const said = { answer: input.answer, answeredAt: ctx.now, answeredBy: input.answeredBy, answeredLinkId: null }
    const change = { ...asked, askedAt: finding.askedAt ?? asked.askedAt, ...said }
    return takeAnswer(ctx, { finding, visit, reads: input.version + 1 }, change, asked, input.reason)
  })
}

async function takeBack(ctx: Write, visit: VisitRecord, findingId: string, why: string): Promise<void> {
  await lockAccount(ctx.tx, visit.jobId)
  const lines = visit.ordered.filter((line) => line.findingId === findingId && line.endedAt === null)
  await endOrderedLines(
    ctx,
    lines.map(({ id }) => id),
  )
  for (const lineId of await pricesOfFinding(ctx.tx, visit.jobId, findingId)) {
    await endPrice(ctx, visit.jobId, { lineId, why })
  }
}
