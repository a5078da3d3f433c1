import { createHash } from 'node:crypto'
import type { Actor } from '@/lib/core/access/roles'
import type { StepId, Station } from '@/lib/core/route/step-ids'
import type { PaymentMethod } from '@/lib/core/money/payment'
import { type StepRef, keyOf } from '@/lib/core/route/keys'
import { alikeTo } from '@/lib/data/alike'
import { db } from '@/lib/data/db'
import { accountOf } from '@/lib/data/prices'
import { visitById } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import type { Moment } from '@/lib/data/write'
import {
  addDiscountSchema,
  addPriceLineSchema,
  bookJobSchema,
  emptyBooking,
  emptyHead,
  type BookJobForm,
  type HeadForm,
} from '@/lib/schemas/job'
import { alikeSchema } from '@/lib/schemas/alike'
import { writeCreditNoteSchema } from '@/lib/schemas/money-papers'
import { askFindingSchema } from '@/lib/schemas/finding'
import {
  acceptOrderSchema,
  noteOutsideCostSchema,
  receiveOutsideSchema,
  repromiseSchema,
  sendOutsideSchema,
} from '@/lib/schemas/outside'
import { addPhotoSchema, type AddPhotoForm } from '@/lib/schemas/photo'
import { orderSupplySchema, receiveSupplySchema } from '@/lib/schemas/supply'
import { acceptPlanSchema, planChoiceSchema } from '@/lib/schemas/plan'
import { handOverSchema } from '@/lib/schemas/release'
import { correctReadingSchema, decideHoldSchema } from '@/lib/schemas/visit'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { addDiscount } from '@/lib/use-cases/jobs/add-discount'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { bookJob, type BookedJob } from '@/lib/use-cases/jobs/book-job'
import type { BookedVisit } from '@/lib/use-cases/jobs/book-heads'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { writeCreditNote } from '@/lib/use-cases/money/write-credit-note'
import { writeInvoice } from '@/lib/use-cases/money/write-invoice'
import { acceptOrder } from '@/lib/use-cases/outside/accept-order'
import { noteOutsideCost } from '@/lib/use-cases/outside/note-cost'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { repromise } from '@/lib/use-cases/outside/repromise'
import { seeOrder } from '@/lib/use-cases/outside/see-order'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { addPhoto } from '@/lib/use-cases/photos/add-photo'
import { acceptPlan } from '@/lib/use-cases/plans/accept-plan'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { orderSupply } from '@/lib/use-cases/supply/order-supply'
import { receiveSupply } from '@/lib/use-cases/supply/receive-supply'
import { seeOrdering } from '@/lib/use-cases/supply/see-ordering'
import { seeSupply } from '@/lib/use-cases/supply/see-supply'
import { findStep } from '@/lib/dossier/find-step'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { waiveGap } from '@/lib/use-cases/visits/waive-gap'
import { openWait } from '@/lib/use-cases/waits/open-wait'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { gapsOf } from '@/lib/dossier/gaps'
import type { DemoCastings } from '../castings'
import type { ShopClock } from '../drive/clock'
import {
  begin,
  checkIn,
  driveThrough,
  driveTo,
  read,
  tick,
  type Hands,
  type OnTheWay,
  type Readings,
} from '../drive/drive'
import { findVisit } from '../drive/found'
import { drawPicture, type Drawn } from '../pictures'
import type { DemoTaxes } from '../prices'
import type { DemoInstruments, DemoStaff } from '../shop'
import type { DemoVendors } from '../vendors'

export type DemoGround = {
  readonly staff: DemoStaff
  readonly taxes: DemoTaxes
  readonly castings: DemoCastings
  readonly vendors: DemoVendors
  readonly instruments: DemoInstruments
}

/** About how long a step takes at each station, in minutes. */
const minutes: Readonly<Record<Station, number>> = {
  'front-desk': 6,
  wash: 18,
  'measuring-bench': 14,
  'flow-bench': 35,
  'port-bench': 95,
  'deck-mill': 32,
  'intake-mill': 25,
  'bolt-bench': 12,
  'seat-machine': 28,
  assembly: 16,
  outside: 10,
}

const mill: readonly Station[] = ['deck-mill', 'intake-mill', 'bolt-bench', 'wash', 'outside']

type Send = {
  readonly heads: readonly number[]
  readonly vendorId: string
  readonly scope: readonly StepId[]
  readonly promisedOn: string
  readonly finishesToSize?: boolean
}
type Words = {
  readonly instructions?: string
  readonly freight?: string
  readonly tracking?: string
  /** It does the order before again, at this one's cost. */
  readonly redoCost?: string
}

/** One job of the demo, as the shop lives it: everything goes through the use cases, at the time on the job's clock. */
export class DemoJob {
  #job: BookedJob | null = null
  #order: { orderId: string } | null = null
  #supply: { orderId: string } | null = null
  #invoice: { paperId: string } | null = null

  constructor(
    readonly ground: DemoGround,
    readonly clock: ShopClock,
  ) {}

  get #now(): Moment {
    return { now: this.clock.pass(2) }
  }

  get #hands(): Hands {
    const { staff, instruments } = this.ground
    return {
      at: (station) => (station === 'front-desk' ? staff.tamsin : mill.includes(station) ? staff.dov : staff.ines),
      time: (station) => this.clock.pass(minutes[station]),
      camera: ({ visit, tag, chambers }, by) =>
        this.#photo(by, { visitId: visit.id, stepId: 'check-in', caption: 'As it came in' }, { tag, chambers }),
      instruments: {
        cc: instruments.burette,
        thickness: instruments.micrometer,
        straightness: instruments.straightedge,
        'seat-depth': instruments.depthGauge,
        recession: instruments.depthGauge,
        protrusion: instruments.depthGauge,
        'cut-depth': instruments.depthGauge,
        flow: instruments.flowBench,
      },
    }
  }

  get booked(): BookedJob {
    if (!this.#job) throw new Error('This job is not booked yet.')
    return this.#job
  }

  head(at: number): BookedVisit {
    const head = this.booked.heads[at]
    if (!head) throw new Error(`Job ${this.booked.number} has no head ${at + 1}.`)
    return head
  }

  /** The tax of that percentage by its name. */
  #tax = (percent: string): string => this.ground.taxes[percent] ?? percent

  /** A booking as it is typed at the counter. */
  async book(over: Partial<Omit<BookJobForm, 'heads'>>, heads: readonly Partial<HeadForm>[]): Promise<void> {
    const prices = (over.prices ?? []).map((line) => ({ ...line, tax: this.#tax(line.tax) }))
    const form = { ...emptyBooking(), ...over, prices, heads: heads.map((head) => ({ ...emptyHead(), ...head })) }
    const typed = alikeSchema.parse(form)
    const alike = await alikeTo(await db(), typed, { customers: [], heads: [] })
    // Every booking of the demo is typed anew: what resembles it on record is another.
    const notThese = { customers: alike.customers.map(({ id }) => id), heads: alike.heads.map(({ head }) => head.id) }
    this.#job = await bookJob(this.ground.staff.tamsin, bookJobSchema.parse({ ...form, notThese }), this.#now)
  }

  checkIn(at: number, readings: Readings = {}) {
    return checkIn(this.#hands, this.head(at).visitId, readings)
  }

  begin(at: number, step: StepRef) {
    return begin(this.#hands, this.head(at).visitId, step)
  }

  read(at: number, step: StepRef, readings: Readings) {
    return read(this.#hands, this.head(at).visitId, step, readings)
  }

  tick(at: number, step: StepRef, readings: Readings = {}) {
    return tick(this.#hands, this.head(at).visitId, step, readings)
  }

  driveTo(at: number, step: StepRef, onTheWay: OnTheWay = {}) {
    return driveTo(this.#hands, this.head(at).visitId, step, onTheWay)
  }

  driveThrough(at: number, step: StepRef, onTheWay: OnTheWay = {}) {
    return driveThrough(this.#hands, this.head(at).visitId, step, onTheWay)
  }

  /** A cut plan for the first pair, and the customer's yes to it. */
  async plan(
    choice: Partial<Parameters<typeof planChoiceSchema.parse>[0] & object>,
    yes: { by: string; how: string } | null,
  ) {
    const form = {
      pairId: this.head(0).pairId,
      seenVersion: 0,
      splitBy: 'margin',
      flatIn: '',
      angleIn: '',
      angleDeg: '',
      stopAtIn: '',
      sinkIn: '',
      reason: '',
      ...choice,
    }
    const { planId } = await makePlanVersion(this.ground.staff.bram, planChoiceSchema.parse(form), this.#now)
    if (yes) await acceptPlan(this.ground.staff.tamsin, acceptPlanSchema.parse({ planId, ...yes }), this.#now)
  }

  async send({ heads, ...order }: Send, words: Words = {}): Promise<void> {
    const form = {
      finishesToSize: false,
      ...order,
      instructions: '',
      freight: '',
      tracking: '',
      ...words,
      heads: heads.map((at) => ({ visitId: this.head(at).visitId, angleIn: '', flatIn: '', comesWith: 'bare' })),
    }
    const again = words.redoCost ? { redoOfId: this.#orderId } : {}
    this.#order = await sendOutside(this.ground.staff.dov, sendOutsideSchema.parse({ ...form, ...again }), this.#now)
  }

  /** Orders what waits to be bought for this job, as the form proposes it; `pieces` of the parts it waits for. */
  async buy(
    vendorId: string,
    promisedOn: string,
    parts: { what: string; pieces: string; cost: string } = { what: '', pieces: '', cost: '' },
  ): Promise<void> {
    const { tamsin } = this.ground.staff
    const moment = this.#now
    const asked = { job: this.booked.number, now: moment.now }
    const { heads, parts: waits } = await seeOrdering(tamsin, asked)
    const form = {
      vendorId,
      jobId: this.booked.jobId,
      promisedOn,
      note: '',
      heads: heads.map((line) => {
        const variant = line.variants.find((choice) => choice.cutByMaker === line.cut)
        const visitIds = line.heads.map((head) => head.visitId)
        return {
          variantId: variant?.id ?? '',
          what: variant ? '' : line.casting,
          visitIds,
          cost: variant?.cost ?? '',
        }
      }),
      parts: waits.map(({ waitId }) => ({
        waitId,
        what: parts.what,
        quantity: parts.pieces,
        cost: parts.cost,
      })),
    }
    this.#supply = await orderSupply(tamsin, orderSupplySchema.parse(form), moment)
  }

  /** The heads that were bought are here, and get the next tags. */
  async arrive(...heads: readonly number[]): Promise<void> {
    if (!this.#supply) throw new Error('Nothing was bought yet.')
    const { orderId } = this.#supply
    const { dov } = this.ground.staff
    const moment = this.#now
    const { version } = await seeSupply(dov, orderId, moment.now)
    const came = heads.map((at) => ({ visitId: this.head(at).visitId, tag: '' }))
    await receiveSupply(dov, receiveSupplySchema.parse({ orderId, version, heads: came, parts: [] }), moment)
  }

  get #orderId(): string {
    if (!this.#order) throw new Error('Nothing was sent yet.')
    return this.#order.orderId
  }

  /** The order as it was last seen, for a change of it. */
  async #seen() {
    const orderId = this.#orderId
    return { orderId, version: (await seeOrder(this.ground.staff.dov, orderId)).version }
  }

  async accept(promisedOn: string, note: string): Promise<void> {
    const moment = this.#now
    const input = acceptOrderSchema.parse({ ...(await this.#seen()), promisedOn, note })
    await acceptOrder(this.ground.staff.tamsin, input, moment)
  }

  async cost(cost: string, freightCost: string): Promise<void> {
    const moment = this.#now
    const input = noteOutsideCostSchema.parse({ ...(await this.#seen()), cost, freightCost })
    await noteOutsideCost(this.ground.staff.tamsin, input, moment)
  }

  async repromise(promisedOn: string, note: string): Promise<void> {
    const moment = this.#now
    const input = repromiseSchema.parse({ ...(await this.#seen()), promisedOn, note })
    await repromise(this.ground.staff.tamsin, input, moment)
  }

  async receive(
    heads: readonly number[],
    confirmed: readonly StepId[],
    marks: { typed: string; read: string },
    rejected: { rejectedWhy: string; redoCost: string } = { rejectedWhy: '', redoCost: '' },
  ): Promise<void> {
    const input = receiveOutsideSchema.parse({
      orderId: this.#orderId,
      heads: heads.map((at) => ({
        visitId: this.head(at).visitId,
        confirmed,
        seatsIn: true,
        marksTyped: marks.typed,
        marksRead: marks.read,
        ...rejected,
      })),
    })
    await receiveOutside(this.ground.staff.dov, input, this.#now)
    for (const at of heads) {
      const words = {
        stepId: 'arrival-count',
        orderId: this.#orderId,
        caption: 'What the vendor scratched on it',
      } as const
      await this.photo(at, words, {
        marks: marks.typed
          .toUpperCase()
          .replaceAll(/[^0-9EX -]/g, '')
          .slice(0, 5),
      })
    }
  }

  async #photo(by: Actor, words: Omit<AddPhotoForm, 'sha256'>, drawn: Drawn): Promise<void> {
    const bytes = await drawPicture(drawn)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    const { sha256: _sha256, ...input } = addPhotoSchema.parse({ ...words, sha256 })
    await addPhoto(by, { ...input, bytes }, this.#now)
  }

  /** A photo of a head at a step, or of what was found or scratched there. */
  async photo(
    at: number,
    words: Omit<AddPhotoForm, 'sha256' | 'visitId'>,
    drawn: Omit<Drawn, 'tag' | 'chambers'> = {},
  ): Promise<void> {
    const { tag, chambers } = await findVisit(this.head(at).visitId)
    await this.#photo(this.ground.staff.ines, { ...words, visitId: this.head(at).visitId }, { tag, chambers, ...drawn })
  }

  hold(at: number, stepId: StepId, reason: string) {
    return openHold(this.ground.staff.dov, { visitId: this.head(at).visitId, stepId, reason }, this.#now)
  }

  async holdAndDecide(
    at: number,
    stepId: StepId,
    reason: string,
    answer: { decision: string; note: string; customerYes?: string },
  ): Promise<void> {
    const { holdId } = await this.hold(at, stepId, reason)
    const input = decideHoldSchema.parse({ holdId, version: 1, customerYes: '', ...answer })
    await decideHold(this.ground.staff.orla, input, this.#now)
  }

  async wait(at: number, step: StepRef, parts: { what: string; fromWhom: string; promisedOn: string }): Promise<void> {
    const { route } = await loadDossier(await db(), this.head(at).visitId)
    const { stepId, occurrence, orderId } = findStep(route, keyOf(step))
    const input = { visitId: this.head(at).visitId, step: { stepId, occurrence, orderId }, ...parts }
    await openWait(this.ground.staff.tamsin, input, this.#now)
  }

  finding(at: number, stepId: StepId, what: string) {
    return reportFinding(this.ground.staff.ines, { visitId: this.head(at).visitId, stepId, what }, this.#now)
  }

  /** What the counter asks about a finding; it then stands on the customer's link. */
  async ask(findingId: string, asked: { price: string; tax: string; addsWork: string[]; how: string }): Promise<void> {
    const input = askFindingSchema.parse({ ...asked, tax: this.#tax(asked.tax), findingId, version: 1 })
    await askFinding(this.ground.staff.tamsin, input, this.#now)
  }

  call(text: string) {
    return logCall(this.ground.staff.tamsin, { jobId: this.booked.jobId, text }, this.#now)
  }

  pay(amount: string, method: PaymentMethod, how = '') {
    const input = { jobId: this.booked.jobId, kind: 'payment', amount, method, how, confirmed: false } as const
    return takePayment(this.ground.staff.tamsin, input, this.#now)
  }

  async discount(amount: string, reason: string): Promise<void> {
    const form = { jobId: this.booked.jobId, amount, tax: this.#tax('8.25'), reason }
    await addDiscount(this.ground.staff.tamsin, addDiscountSchema.parse(form), this.#now)
  }

  /** Puts one line in the place of all that stand there. */
  async charge(text: string, unitPrice: string, why: string): Promise<void> {
    const { tamsin } = this.ground.staff
    const { jobId } = this.booked
    for (const { id: lineId } of (await accountOf(await db(), jobId)).prices) {
      await endPriceLine(tamsin, { jobId, lineId, why }, this.#now)
    }
    const form = { jobId, text, quantity: '1', unitPrice, tax: this.#tax('8.25') }
    await addPriceLine(tamsin, addPriceLineSchema.parse(form), this.#now)
  }

  async invoice(): Promise<void> {
    const { jobId } = this.booked
    const { openMinor } = await accountOf(await db(), jobId)
    this.#invoice = await writeInvoice(this.ground.staff.tamsin, { jobId, seenMinor: openMinor }, this.#now)
  }

  /** `amounts`: of each line of the invoice, without tax; '' takes nothing back. */
  async credit(amounts: readonly string[], reason: string): Promise<void> {
    if (!this.#invoice) throw new Error('Nothing was invoiced yet.')
    const form = { invoiceId: this.#invoice.paperId, amounts: [...amounts], reason }
    await writeCreditNote(this.ground.staff.tamsin, writeCreditNoteSchema.parse(form), this.#now)
  }

  /** Adds a correction of the answer that stands at one point of a step. */
  async correct(
    at: number,
    place: { stepId: StepId; kind: string; point: string },
    text: string,
    reason: string,
  ): Promise<void> {
    const { visit, readings } = await loadDossier(await db(), this.head(at).visitId)
    const reading = readings.findLast(
      ({ step, kind, point }) => step.stepId === place.stepId && kind === place.kind && point === place.point,
    )
    if (!reading) throw new Error(`Nothing was read at ${place.stepId}, ${place.kind}.`)
    const input = { visitId: visit.id, readingId: reading.id, correction: 'replace', text, reason }
    await correctReading(this.ground.staff.ines, correctReadingSchema.parse(input), this.#now)
  }

  /** The owner lets a step pass that is not done. */
  async waive(at: number, step: StepRef, reason: string): Promise<void> {
    const found = await loadDossier(await db(), this.head(at).visitId)
    const key = keyOf(step)
    const gap = gapsOf(found).find(
      (missing) =>
        missing.what === 'step' && missing.step.stepId === key.stepId && missing.step.occurrence === key.occurrence,
    )
    if (!gap) throw new Error(`${step} is not missing.`)
    await waiveGap(this.ground.staff.orla, { visitId: found.visit.id, gap: gap.gap, reason }, this.#now)
  }

  async release(at: number): Promise<void> {
    const { id, version } = await visitById(await db(), this.head(at).visitId)
    await releaseVisit(this.ground.staff.bram, { visitId: id, version, reason: '' }, this.#now)
  }

  returnAsIs(at: number, reason: string) {
    return returnAsIs(this.ground.staff.orla, { visitId: this.head(at).visitId, reason }, this.#now)
  }

  async handOver(
    heads: readonly { at: number; side: string; partsBack?: string }[],
    takenBy: string,
    note = '',
    unpaidReason = '',
  ): Promise<void> {
    const input = handOverSchema.parse({
      jobId: this.booked.jobId,
      takenBy,
      note,
      unpaidReason,
      heads: heads.map(({ at, side, partsBack = '' }) => ({
        visitId: this.head(at).visitId,
        side,
        partsBack,
      })),
    })
    const { orla, tamsin } = this.ground.staff
    await handOver(unpaidReason === '' ? tamsin : orla, input, this.#now)
  }
}
