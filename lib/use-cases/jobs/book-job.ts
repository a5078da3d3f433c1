import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must, RefusedError } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { headsTyped, refuseAlike } from '@/lib/data/alike'
import { estimateById } from '@/lib/data/bench'
import { addJob, putEngine } from '@/lib/data/booking'
import { nextNumber } from '@/lib/data/counters'
import { pickOrAddCustomer } from '@/lib/data/customers'
import type { Reader } from '@/lib/data/db'
import { addPrices } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { sendByItself } from '@/lib/dossier/messages/send-by-itself'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import { wantedSaid } from '@/lib/dossier/wanted-changes'
import { addPlan } from '@/lib/dossier/add-plan'
import { headsOfPair } from '@/lib/dossier/plan-context'
import type { BookJobInput, FirstPlanInput } from '@/lib/schemas/job'
import { keptWanted } from '@/lib/schemas/wanted'
import { AllWrong } from './all-wrong'
import { bookHeads, checkHeads, type BookedVisit } from './book-heads'
import { engineOf } from './engine-of'
import type { AmountManner } from '@/lib/core/money/amount'
import { minorAt, priceOf, type PriceLine } from '@/lib/core/money/price-of'
import { taxOf } from '@/lib/data/tax-rates'
import { takeMoney } from '@/lib/dossier/money/take-money'
import { freezePaper } from '@/lib/papers/money-paper'
import { refuseUnknownWork } from '@/lib/dossier/refuse-unknown-work'

export type BookedJob = {
  readonly jobId: string
  readonly number: string
  readonly heads: readonly BookedVisit[]
  /** Why the cut that was chosen at the bench is not planned yet; '': it is, or none was chosen. */
  readonly notPlanned: string
}

/** Books a job: customer, engine, heads with their tags, ordered work, prices and deposit, in one transaction. */
export async function bookJob(actor: Actor, input: BookJobInput, moment: Moment): Promise<BookedJob> {
  must(allow(actor, 'job.book'))
  if (input.prices.length > 0) must(allow(actor, 'price.change'))
  if (input.deposit !== '') must(allow(actor, 'payment.take'))
  const { receiptId, ...booked } = await write(actor, moment, async (ctx) => {
    await refuseUnknownEstimate(ctx.tx, input.estimateId)
    await refuseUnknownWork(
      ctx.tx,
      { rulesVersion: ctx.settingsVersion },
      input.ordered.map(({ work }) => work),
    )
    const shop = await shopOf(ctx.tx)
    const today = dayIn(shop.timeZone, ctx.now)
    const wrong = new AllWrong()
    await wrong.of(() => refusePast(input.promiseOn, today))
    const prices = await linesOf(ctx.tx, input, shop, wrong)
    if (input.deposit !== '') await wrong.of(() => minorAt(input.deposit, shop, 'deposit'))
    await checkHeads(ctx.tx, input.heads, wrong)
    wrong.refuse()
    await nextNumber(ctx.tx, 'booked') // one after the other: each sees whom the one before put on record
    await refuseAlike(ctx.tx, { customer: input.customer, heads: headsTyped(input.heads) }, input.notThese)
    const customerId = await pickOrAddCustomer(ctx, input.customer)
    const job = await addJob(ctx, today, { ...jobFields(input), customerId })
    await putEngine(ctx, job.id, engineOf(input.engine))
    const heads = await bookHeads(ctx, job, input)
    await addPrices(ctx, job.id, prices)
    const receiptId = input.deposit === '' ? null : await takeDeposit(ctx, job.id, input, shop)
    ctx.audit({
      action: 'job.book',
      subjectId: job.id,
      jobId: job.id,
      changes: {
        number: job.number,
        customerId,
        ...saidAtBooking(input),
        tags: heads.map((head) => head.tag),
      },
    })
    const notPlanned = input.firstPlan === null ? '' : await planFirst(ctx, heads, input.firstPlan)
    for (const head of heads) await refreshRoute(ctx.tx, head.visitId, ctx.now)
    await sendByItself(ctx, 'booked', job.id)
    return { jobId: job.id, number: job.number, heads, notPlanned, receiptId }
  })
  if (receiptId) await freezePaper(receiptId)
  return booked
}

/** The cut that was chosen at the bench, as the first plan of the first head's pair. Nobody has accepted it yet. */
async function planFirst(ctx: Write, [first]: readonly BookedVisit[], chosen: FirstPlanInput): Promise<string> {
  if (!first) return ''
  const { kind, angleIn, stopAtIn, sinkIn } = chosen
  const plan = await addPlan(ctx, await headsOfPair(ctx.tx, first.pairId), {
    ...{ pairId: first.pairId, kind, splitBy: angleIn === null ? 'margin' : 'angle' },
    ...{ flatIn: null, angleIn, angleDeg: null, stopAtIn, sinkIn, thicknessIn: null, reason: '' },
  })
  return plan.ok ? '' : plan.refusal.message
}

async function linesOf(
  reader: Reader,
  { prices }: BookJobInput,
  manner: AmountManner,
  wrong: AllWrong,
): Promise<PriceLine[]> {
  const lines: PriceLine[] = []
  for (const [at, line] of prices.entries()) {
    const tax = await wrong.of(() => taxOf(reader, line.tax, `prices.${at}.tax`))
    const read = await wrong.of(() => priceOf(line, tax ?? noTax, manner, `prices.${at}.unitPrice`))
    if (read) lines.push(read)
  }
  return lines
}

const noTax = { taxName: '', taxMillionths: 0 }

/** A deposit of more than the price lines come to is asked about; one before there are any is not. */
async function takeDeposit(ctx: Write, jobId: string, input: BookJobInput, manner: AmountManner): Promise<string> {
  const { deposit, depositMethod: method, depositHow: how, depositConfirmed: confirmed } = input
  const fields = { amount: 'deposit', confirmed: 'depositConfirmed' }
  const minor = minorAt(deposit, manner, 'deposit')
  return (await takeMoney(ctx, jobId, { kind: 'deposit', minor, method, how, confirmed, fields })).receiptId
}

async function refuseUnknownEstimate(reader: Reader, estimateId: string): Promise<void> {
  if (estimateId === '' || (await estimateById(reader, estimateId))) return
  throw new RefusedError({ code: 'not-found', message: 'Estimate not found. Book the job without it.' })
}

function refusePast(promiseOn: string | null, today: string): void {
  if (promiseOn === null || promiseOn >= today) return
  const message = 'The promise date is in the past. Pick a later day.'
  throw new RefusedError({ code: 'invalid', message, fields: { promiseOn: message } })
}

/** For the trail: the wanted figures one by one, as typed, and who or what on record it is not. */
function saidAtBooking(input: BookJobInput) {
  const { wanted, benchQuery: _address, ...said } = jobFields(input)
  const { customers, heads } = input.notThese
  return { ...said, ...wantedSaid(wanted), ...(customers.length + heads.length > 0 && { notThese: input.notThese }) }
}

const jobFields = (input: BookJobInput) => ({
  preset: input.preset,
  promiseOn: input.promiseOn,
  urgent: input.urgent,
  partsPlace: input.partsPlace,
  note: input.note,
  classFlatOnly: input.classFlatOnly,
  classMinCc: input.classMinCc,
  classMaxCut: input.classMaxCut,
  finishAsked: input.finishAsked,
  wanted: keptWanted(input.wanted),
  pricesOnLink: input.pricesOnLink,
  estimateId: input.estimateId === '' ? null : input.estimateId,
  benchQuery: input.benchQuery,
})
