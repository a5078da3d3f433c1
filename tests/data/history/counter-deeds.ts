import { db } from '@/lib/data/db'
import { accountOf } from '@/lib/data/prices'
import { addPriceLineSchema, takePaymentSchema } from '@/lib/schemas/job'
import { receiveOutsideSchema, sendOutsideSchema } from '@/lib/schemas/outside'
import { planChoiceSchema } from '@/lib/schemas/plan'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { takePayment, type TakenPayment } from '@/lib/use-cases/jobs/take-payment'
import { voidPayment } from '@/lib/use-cases/money/void-payment'
import { writeInvoice, type WrittenPaper } from '@/lib/use-cases/money/write-invoice'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { bookAsTyped, head as headForm, owner } from '../../use-cases/jobs/counter-shop'
import type { Deed, HeadModel, JobModel, Model, OrderModel } from './model'

export const vendorId = '019caed9-4300-7000-8000-00000000000a'

const letters = (count: number): string =>
  [...String(count)].map((digit) => String.fromCharCode(65 + 2 * Number(digit))).join('')

/** A customer whom nobody can take for another, one head, and a price of 95.50. */
export function book(model: Model): Deed {
  const count = model.jobs.length
  const name = `${letters(count)}ora ${letters(count + 7)}uist`
  const form = {
    customer: { id: '', name, phone: `(555) 010-${String(1000 + 37 * count)}`, email: '', address: '' },
    heads: [headForm({ presentCc: '64' })],
    targetCc: '61.0',
    prices: [{ text: 'Flat cut', quantity: '1', unitPrice: '95.50', tax: '0' }],
    ordered: [{ work: 'flat-cut' as const, note: '' }],
  }
  return {
    what: 'book',
    forecast: 'must',
    run: (moment) => bookAsTyped(form, moment, owner),
    follow: ({ jobId, number, heads: [booked] }: BookedJob) => {
      if (!booked) throw new Error('One head was booked.')
      const money = { plans: 0, dueMinor: 9550, openMinor: 9550, payments: [] }
      const job: JobModel = { id: jobId, number, pairId: booked.pairId, ...money }
      model.jobs.push(job)
      const lists = { events: [], values: new Map(), openHolds: [], decidedHolds: [], releases: 0 }
      model.heads.push({ visitId: booked.visitId, job, ...lists })
    },
  }
}

/** `stale`: by somebody who has not seen the newest. */
export function plan(job: JobModel, stale: boolean): Deed {
  const empty = { angleIn: '', angleDeg: '', stopAtIn: '', sinkIn: '0' }
  const seenVersion = stale ? job.plans + 1 : job.plans
  const choice = {
    ...empty,
    pairId: job.pairId,
    kind: 'flat',
    splitBy: 'flat',
    flatIn: '',
    seenVersion,
    reason: 'asked for',
  }
  return {
    what: stale ? 'plan, unseen' : 'plan',
    forecast: stale ? 'must not' : 'may',
    run: (moment) => makePlanVersion(owner, planChoiceSchema.parse(choice), moment),
    follow: () => {
      job.plans += 1
    },
    job,
  }
}

export function send(model: Model, head: HeadModel): Deed {
  const heads = [{ visitId: head.visitId, angleIn: '', flatIn: '', comesWith: '' }]
  const words = { instructions: '', freight: '', tracking: '', promisedOn: '', unacceptedWhy: 'the owner says so' }
  const typed = { vendorId, scope: ['flat-cut'], heads, finishesToSize: false, ...words }
  return {
    what: 'send',
    forecast: head.openHolds.length > 0 ? 'must not' : 'may',
    run: (moment) => sendOutside(owner, sendOutsideSchema.parse(typed), moment),
    follow: ({ orderId }: { orderId: string }) => {
      model.orders.push({ orderId, head, received: false })
      head.events.push('sent')
    },
    head,
  }
}

/** Back from the vendor; a second time it is not. */
export function receive(order: OrderModel): Deed {
  const { head, orderId, received } = order
  const heads = [{ visitId: head.visitId, confirmed: ['flat-cut'], seatsIn: true, marksTyped: '', marksRead: '' }]
  return {
    what: 'receive',
    forecast: received ? 'must not' : 'must',
    run: (moment) => receiveOutside(owner, receiveOutsideSchema.parse({ orderId, heads }), moment),
    follow: () => {
      order.received = true
      head.events.push('received')
    },
    head,
  }
}

export async function release(head: HeadModel): Promise<Deed> {
  const { version } = await (await db()).visit.findUniqueOrThrow({ where: { id: head.visitId } })
  const input = { visitId: head.visitId, version, reason: '' }
  return {
    what: 'release',
    // Its reason is missing where it would be a second one.
    forecast: head.openHolds.length > 0 || head.releases > 0 ? 'must not' : 'may',
    run: (moment) => releaseVisit(owner, input, moment),
    follow: () => {
      head.releases += 1
      head.events.push('release')
    },
    head,
  }
}

export function price(job: JobModel, dollars: number): Deed {
  const typed = { jobId: job.id, text: 'Extra work', quantity: '1', unitPrice: `${dollars}.25`, tax: '0' }
  return {
    what: 'price',
    forecast: 'must',
    run: (moment) => addPriceLine(owner, addPriceLineSchema.parse(typed), moment),
    follow: () => {
      job.dueMinor += dollars * 100 + 25
      job.openMinor += dollars * 100 + 25
    },
    job,
  }
}

export function invoice(model: Model, job: JobModel, stale: boolean): Deed {
  return {
    what: 'invoice',
    forecast: job.openMinor === 0 || stale ? 'must not' : 'must',
    run: (moment) => writeInvoice(owner, { jobId: job.id, seenMinor: job.openMinor + (stale ? 1 : 0) }, moment),
    follow: ({ number }: WrittenPaper) => {
      model.invoices.push(number)
      job.openMinor = 0
    },
    job,
  }
}

/** A part of what is owed, or all of it. */
export function pay(model: Model, job: JobModel, whole: boolean): Deed | null {
  if (job.dueMinor <= 0) return null
  const minor = whole ? job.dueMinor : Math.min(job.dueMinor, 1000)
  const typed = { jobId: job.id, kind: 'payment', method: 'cash', how: '', confirmed: false }
  const input = takePaymentSchema.parse({ ...typed, amount: (minor / 100).toFixed(2) })
  return {
    what: 'pay',
    forecast: 'must',
    run: (moment) => takePayment(owner, input, moment),
    follow: ({ id, receipt }: TakenPayment) => {
      job.dueMinor -= minor
      job.payments.push({ id, minor, voided: false })
      model.receipts.push(receipt)
    },
    job,
  }
}

/** The newest payment does not count any more; a second time it is refused. */
export function unpay(job: JobModel): Deed | null {
  const payment = job.payments.at(-1)
  if (!payment) return null
  return {
    what: 'void',
    forecast: payment.voided ? 'must not' : 'must',
    run: (moment) => voidPayment(owner, { paymentId: payment.id, reason: 'typed twice' }, moment),
    follow: () => {
      payment.voided = true
      job.dueMinor += payment.minor
    },
    job,
  }
}

export const accountNow = async ({ id }: JobModel) => accountOf(await db(), id)
