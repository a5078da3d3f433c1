import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { formatAmount } from '@/lib/core/money/amount'
import { taxText } from '@/lib/core/money/percent'
import { rateField } from '@/lib/core/money/tax-choice'
import { estimateOf, type EstimateAnswer } from '@/lib/core/options/estimate'
import { questionOf } from '@/lib/core/options/question-of'
import { stepLabels } from '@/lib/core/route/steps'
import { benchShop } from '@/lib/data/bench-shop'
import { db, type Reader } from '@/lib/data/db'
import { priceItemsOfSteps } from '@/lib/data/price-list'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { taxPicks } from '@/lib/data/tax-rates'
import { benchQuery, readBench, type BenchForm } from '@/lib/schemas/bench-question'
import { bookingFromBench, type ChosenCut } from '@/lib/schemas/booking-from-bench'
import type { BookJobForm } from '@/lib/schemas/job'
import { castingOnBench } from './see-bench-casting'
import { seeEstimate } from './see-estimate'

/** A booking's form begun from a kept answer: who asked, the figures, the chosen cut and a price line for each step of it. */
export async function startBookingFromEstimate(actor: Actor, id: string): Promise<BookJobForm> {
  must(allow(actor, 'job.book'))
  const { question, answer, forWhom, note } = await seeEstimate(actor, id)
  const chosen = await chosenCut(await db(), answer)
  return bookingFromBench(question, { chosen, customer: forWhom, note, estimateId: id, benchQuery: '' })
}

export type BenchChoice = {
  readonly question: BenchForm
  /** Which of the bench's ways; '': none was chosen. */
  readonly wayId: string
  /** Where the slider stands, in inches; null: as the way proposes. */
  readonly angleIn: number | null
}

/** The same from a question that nobody kept. A way that no longer fits the question is left out, its figures stay. */
export async function startBookingFromBench(actor: Actor, asked: BenchChoice): Promise<BookJobForm> {
  must(allow(actor, 'job.book'))
  const { question, wayId, angleIn } = asked
  const client = await db()
  const { timeZone } = await shopOf(client)
  const { values: settings } = await currentSettings(client)
  const casting = question.castingId === '' ? null : await castingOnBench(client, question.castingId, settings, true)
  const shop = await benchShop(client, { settings, timeZone }, true)
  const answer = estimateOf(questionOf(readBench(question).asked, casting, shop), wayId, angleIn)
  const chosen = answer.ok ? await chosenCut(client, answer.value) : null
  return bookingFromBench(question, {
    chosen,
    customer: '',
    note: '',
    estimateId: '',
    benchQuery: benchQuery(question),
  })
}

async function chosenCut(reader: Reader, answer: EstimateAnswer): Promise<ChosenCut> {
  return {
    kind: answer.kind,
    angleIn: answer.drawing.cut.angleIn,
    title: answer.title,
    source: answer.from?.source ?? 'customer',
    prices: await priceLines(reader, answer),
  }
}

/**
 * A line for each step of the chosen cut, for one head: as the customer was told; where that was not kept, by the list as
 * it is. A step without a price has its line too: its amount is for the counter to type, or the line to remove.
 */
async function priceLines(reader: Reader, answer: EstimateAnswer): Promise<BookJobForm['prices']> {
  const { currencyExponent } = await shopOf(reader)
  const items = await priceItemsOfSteps(reader)
  const ownTax = (await taxPicks(reader)).find(({ isDefault }) => isDefault)?.value ?? ''
  const line = (text: string, minor: number | null, tax: string) => ({
    text,
    quantity: '1',
    unitPrice: minor === null ? '' : formatAmount(minor, currencyExponent),
    tax,
    perHead: true,
  })
  const lines = answer.steps.flatMap(({ stepId, label, unitMinor }) => {
    const listed = items.filter((item) => item.stepId === (stepId ?? stepOf(label)))
    const listedMinor = listed.reduce((sum, item) => sum + item.unitMinor, 0)
    const tax = ({ taxRateId, taxMillionths }: (typeof listed)[number]) =>
      taxRateId === null ? taxText(taxMillionths) : rateField(taxRateId)
    if (listed.length > 0 && (unitMinor ?? listedMinor) === listedMinor) {
      return listed.map((item) => line(item.text, item.unitMinor, tax(item)))
    }
    const [first] = listed
    return [line(first?.text ?? label, unitMinor ?? null, first ? tax(first) : ownTax)]
  })
  const { from } = answer
  const head = from && from.source !== 'customer' ? [line(answer.start, from.costMinor, ownTax)] : []
  return [...head, ...lines]
}

/** Answers that were kept without the steps' ids have their labels, as the program called them then. */
const stepOf = (label: string): string =>
  Object.entries(stepLabels).find(([, words]) => words === label)?.[0] ?? 'no step'
