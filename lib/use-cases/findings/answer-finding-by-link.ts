import { RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { findingById } from '@/lib/data/findings'
import { deadLink, openLink, type OpenLink } from '@/lib/data/links'
import { shopOf } from '@/lib/data/shop'
import { visitById } from '@/lib/data/visits'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { AnswerByLinkInput } from '@/lib/schemas/answer-by-link'
import { isOver, questionOf, standing } from '@/lib/dossier/question'
import { takeAnswer } from './take-answer'

/**
 * The customer's own yes or no, by whoever holds the job's link. What a dead link opens, and what is of another job, is
 * refused in the words of the page: looked up before anything else, so that not even an answer that is kept is told.
 */
export async function answerFindingByLink(
  { token }: { readonly token: string },
  input: AnswerByLinkInput,
  moment: Moment,
): Promise<{ id: string }> {
  const link = await openLink(await db(), token, moment.now)
  return write({ linkId: link.id }, moment, async (ctx) => {
    await openLink(ctx.tx, token, ctx.now)
    const asked = await askedFinding(ctx, link, input)
    const said = {
      answer: input.answer,
      answeredAt: ctx.now,
      answeredBy: input.answeredBy,
      answeredLinkId: link.id,
    }
    return takeAnswer(ctx, { ...asked, reads: input.version }, said, asked.finding)
  })
}

/** A finding of this link's job that was asked, waits, and reads as it did on the customer's page. */
async function askedFinding(ctx: Write<{ linkId: string }>, link: OpenLink, input: AnswerByLinkInput) {
  const finding = await findingById(ctx.tx, input.findingId, deadLink)
  if (finding.visit.jobId !== link.jobId || finding.askedAt === null) throw deadLink()
  const visit = await visitById(ctx.tx, finding.visitId)
  const question = questionOf(finding, '', await shopOf(ctx.tx))
  if (question.answered !== null || finding.version !== input.version) {
    throw new RefusedError({
      code: 'conflict',
      message:
        question.answered === null
          ? 'We changed this question while you were reading it. Nothing was sent.'
          : 'This question is already answered. Nothing was changed.',
      readsNow: standing(question),
    })
  }
  if (isOver(visit)) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'The work on this head is finished. Please call us to add work.',
    })
  }
  if (question.price === null) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This has no price yet. Please call us.',
    })
  }
  return { finding, visit }
}
