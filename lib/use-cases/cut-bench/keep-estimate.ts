import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { estimateOf } from '@/lib/core/options/estimate'
import { questionOf } from '@/lib/core/options/question-of'
import { db } from '@/lib/data/db'
import { nextNumber } from '@/lib/data/counters'
import { newId } from '@/lib/data/ids'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { estimateAnswer } from '@/lib/data/stored/estimate'
import { write, type Moment } from '@/lib/data/write'
import { type KeepEstimateInput } from '@/lib/schemas/bench'
import { readBench } from '@/lib/schemas/bench-question'
import { benchShop } from '@/lib/data/bench-shop'
import { estimateQuestion } from './estimate-question'
import { castingOnBench } from './see-bench-casting'

/** Keeps an answer of the cut bench as it was given: worked out anew here, from the question as typed. */
export async function keepEstimate(actor: Actor, input: KeepEstimateInput, moment: Moment) {
  must(allow(actor, 'estimate.keep'))
  const { question, wayId, angleIn, forWhom, note } = input
  const client = await db()
  const { timeZone } = await shopOf(client)
  const { values: settings } = await currentSettings(client)
  const casting = question.castingId === '' ? null : await castingOnBench(client, question.castingId, settings, true)
  const asked = questionOf(readBench(question).asked, casting, await benchShop(client, { settings, timeZone }, true))
  const answer = must(estimateOf(asked, wayId, angleIn))
  return write(actor, moment, async (ctx) => {
    const id = newId(ctx.now)
    const number = `E-${String(await nextNumber(ctx.tx, 'estimate')).padStart(4, '0')}`
    await ctx.tx.estimate.create({
      data: {
        id,
        number,
        forWhom,
        note,
        question: estimateQuestion.write({
          ...question,
          castingName: casting?.name ?? '',
          chamberShape: casting?.chamberShape ?? 'open',
        }),
        answer: estimateAnswer.write(answer),
        createdAt: ctx.now,
        byId: actor.personId,
      },
    })
    ctx.audit({
      action: 'estimate.save',
      subjectId: id,
      changes: { number, title: answer.title },
    })
    return { id, number }
  })
}
