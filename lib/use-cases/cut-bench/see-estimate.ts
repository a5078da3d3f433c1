import type { ChamberShape } from '@/lib/core/casting/chamber-shape'
import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { EstimateAnswer } from '@/lib/core/options/estimate'
import { estimateById, jobsOfEstimate } from '@/lib/data/bench'
import { db } from '@/lib/data/db'
import { namesOf } from '@/lib/data/people'
import { estimateAnswer } from '@/lib/data/stored/estimate'
import type { BenchForm } from '@/lib/schemas/bench-question'
import { estimateQuestion } from './estimate-question'

export type EstimateView = {
  readonly id: string
  readonly number: string
  readonly forWhom: string
  readonly note: string
  readonly question: BenchForm
  readonly castingName: string
  readonly chamberShape: ChamberShape
  readonly answer: EstimateAnswer
  readonly at: Date
  readonly by: string
  readonly mayBook: boolean
  /** Numbers of the jobs that came of it. */
  readonly jobs: readonly string[]
}

/** A kept answer; its price only for those who may see prices. */
export async function seeEstimate(actor: Actor, id: string): Promise<EstimateView> {
  must(allow(actor, 'cut-bench.see'))
  const client = await db()
  const estimate = await estimateById(client, id)
  if (!estimate) throw new RefusedError({ code: 'not-found', message: 'Estimate not found.' })
  const { castingName, chamberShape, ...question } = estimateQuestion.read(estimate.question, id)
  const answer = estimateAnswer.read(estimate.answer, id)
  const names = await namesOf([estimate.byId])
  return {
    id,
    number: estimate.number,
    forWhom: estimate.forWhom,
    note: estimate.note,
    question,
    castingName,
    chamberShape,
    answer: sees(actor, 'price') ? answer : withoutPrices(answer),
    at: estimate.createdAt,
    by: names.get(estimate.byId) ?? '',
    mayBook: can(actor, 'job.book'),
    jobs: (await jobsOfEstimate(client, id)).map(({ number }) => number),
  }
}

const withoutPrices = ({ from, steps, ...answer }: EstimateAnswer): EstimateAnswer => ({
  ...answer,
  ...(from && { from: { ...from, costMinor: null } }),
  steps: steps.map((step) => ({ ...step, unitMinor: null })),
  priceMinor: null,
  unpriced: [],
})
