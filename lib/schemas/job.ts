import { z } from 'zod'
import { chamberForms } from '@/lib/core/casting/figures'
import { camAnswers } from '@/lib/core/engine/cam-answer'
import { engineFigures, engineFigureKeys, type EngineFigureKey } from '@/lib/core/engine/figures'
import { presetWork } from '@/lib/core/route/presets'
import { isWorkId, presets, type Preset, type WorkId } from '@/lib/core/route/step-ids'
import { isDay } from '@/lib/core/shop/calendar'
import { parseTag, type TagNumber } from '@/lib/core/shop/tag-number'
import { notTheseSchema } from './alike'
import { customerChoice } from './customer'
import { requiredText, optionalDay, optionalFigure, words } from './figure'
import { emptyWanted, wantedFields } from './wanted'
import { paymentMethods } from '@/lib/core/money/payment'
import { amount, optionalAmount, priceQuantity, taxChoice } from './money'
import { text } from './text'

export const workId = z.custom<WorkId>(
  (id) => typeof id === 'string' && isWorkId(id),
  'This work is not on the list. Pick another.',
)

const day = optionalDay.refine((value) => value === null || isDay(value), 'This day does not exist. Check the date.')

/** A tag's own number; '' → null: the next one of the shop's series. */
export const optionalTag = text()
  .trim()
  .transform((text, context): TagNumber | null => {
    if (text === '') return null
    const tag = parseTag(text)
    if (tag.ok) return tag.value
    context.addIssue({ code: 'custom', message: tag.refusal.message })
    return z.NEVER
  })

const engineFigureFields = Object.fromEntries(
  engineFigureKeys.map((key) => [key, optionalFigure(engineFigures[key].quantity)]),
) as Record<EngineFigureKey, ReturnType<typeof optionalFigure>>

/** Everything about an engine may be unknown; what depends on it says what it needs. */
export const engineFields = z.object({
  label: words(120),
  layout: z.enum(['inline', 'v', 'unknown']),
  camInHead: z.enum(camAnswers),
  figures: z.object(engineFigureFields),
})

export const headSources = ['customer', 'bought', 'bought-cut'] as const

/** One head of a booking. `headId` names a head that was here before; '' is a new one. */
export const bookedHead = z.object({
  headId: text().trim().max(64),
  castingId: text().trim().max(64),
  tag: optionalTag,
  stamp: words(60),
  marks: words(120),
  material: words(60),
  chamberForm: z.enum(chamberForms),
  side: words(60),
  source: z.enum(headSources),
  used: z.boolean(),
  cameAssembled: z.boolean(),
  overheated: z.boolean(),
  cameWith: words(300),
  ownedBy: words(120),
  rackPlace: words(60),
  presentCc: optionalFigure('chamberVolume'),
  /** Where it departs from the job's target. */
  targetCc: optionalFigure('chamberVolume'),
  comeback: z.boolean(),
  comebackCause: words(300),
  comebackPays: words(120),
})

export const orderedWork = z.object({ work: workId, note: words(200) })

export const pricedLine = z.object({
  text: requiredText('Enter what it is for.', 120),
  quantity: priceQuantity,
  unitPrice: amount,
  tax: taxChoice,
})

/** A price line of a booking: one that is for each head has as many pieces as the job has heads. */
export const bookedLine = pricedLine.extend({ perHead: z.boolean().default(false) })

/** The cut that was chosen at the cut bench: worked out anew from the job's figures, as the first plan of its heads. */
export const firstPlan = z.object({
  kind: z.enum(['clean-up', 'flat', 'angle', 'angle-flat']),
  /** How the cut is split: the angle part; empty where there is no split. */
  angleIn: optionalFigure('cutDepth'),
  stopAtIn: optionalFigure('stopAt'),
  sinkIn: optionalFigure('sink'),
  /** As the bench said it. */
  words: words(200),
})

export const bookJobSchema = z
  .object({
    customer: customerChoice,
    engine: engineFields,
    preset: z.enum(presets),
    /** Copied to every head that has none of its own. */
    targetCc: optionalFigure('chamberVolume'),
    heads: z
      .array(bookedHead)
      .min(1, 'Add at least one head.')
      .max(16, 'A job has 16 heads at most. Book the rest on another job.'),
    ordered: z.array(orderedWork).max(60),
    classFlatOnly: z.boolean(),
    classMinCc: optionalFigure('chamberVolume'),
    classMaxCut: optionalFigure('cutDepth'),
    finishAsked: words(120),
    /** What the benches work to on all its heads. */
    wanted: wantedFields,
    prices: z.array(bookedLine).max(60),
    deposit: optionalAmount,
    depositMethod: z.enum(paymentMethods).default('other'),
    depositHow: words(60),
    /** More than the price lines come to, and that is meant. */
    depositConfirmed: z.boolean().default(false),
    promiseOn: day,
    urgent: z.boolean(),
    partsPlace: words(60),
    note: words(1000),
    pricesOnLink: z.boolean(),
    /** The kept answer of the cut bench that it comes from; '': none. */
    estimateId: text().trim().max(64),
    /** The question to the cut bench that it comes from, as its address; '': none. */
    benchQuery: text().max(4000).default(''),
    firstPlan: firstPlan.nullable().default(null),
    /** On record, like what is typed, and said to be others. */
    notThese: notTheseSchema,
  })
  .superRefine(checkHeads)

function checkHeads(job: { heads: readonly z.output<typeof bookedHead>[] }, context: z.RefinementCtx): void {
  const given = new Map<string, number>()
  job.heads.forEach((head, at) => {
    const wrong = (field: string, message: string) =>
      context.addIssue({ code: 'custom', path: ['heads', at, field], message })
    if (head.comeback && head.headId === '') wrong('comeback', 'Pick the head from an earlier job to mark a comeback.')
    if (head.tag === null) return
    const first = given.get(head.tag.number)
    if (first !== undefined) wrong('tag', `Head ${first + 1} already has ${head.tag.number}.`)
    else given.set(head.tag.number, at)
  })
}

export type BookJobForm = z.input<typeof bookJobSchema>
export type BookJobInput = z.output<typeof bookJobSchema>
export type FirstPlanForm = z.input<typeof firstPlan>
export type FirstPlanInput = z.output<typeof firstPlan>
export type HeadForm = BookJobForm['heads'][number]
export type BookedHead = z.output<typeof bookedHead>
export type EngineInput = z.output<typeof engineFields>

/** A booking with nothing typed yet: what a form starts from. */
export const emptyHead = (): HeadForm => ({
  headId: '',
  castingId: '',
  tag: '',
  stamp: '',
  marks: '',
  material: '',
  chamberForm: 'as-cast',
  side: '',
  source: 'customer',
  used: true,
  cameAssembled: false,
  overheated: false,
  cameWith: '',
  ownedBy: '',
  rackPlace: '',
  presentCc: '',
  targetCc: '',
  comeback: false,
  comebackCause: '',
  comebackPays: '',
})

export const emptyEngineFigures = (): Record<EngineFigureKey, string> =>
  Object.fromEntries(engineFigureKeys.map((key) => [key, ''])) as Record<EngineFigureKey, string>

export const orderOf = (preset: Preset): BookJobForm['ordered'] =>
  presetWork[preset].map((work) => ({ work, note: '' }))

export const emptyBooking = (): BookJobForm => ({
  customer: { id: '', name: '', phone: '', email: '', address: '' },
  engine: { label: '', layout: 'unknown', camInHead: 'unknown', figures: emptyEngineFigures() },
  preset: 'cut-to-size',
  targetCc: '',
  heads: [emptyHead()],
  ordered: orderOf('cut-to-size'),
  classFlatOnly: false,
  classMinCc: '',
  classMaxCut: '',
  finishAsked: '',
  wanted: emptyWanted(),
  prices: [],
  deposit: '',
  depositMethod: 'cash',
  depositHow: '',
  depositConfirmed: false,
  promiseOn: '',
  urgent: false,
  partsPlace: '',
  note: '',
  pricesOnLink: false,
  estimateId: '',
  benchQuery: '',
  firstPlan: null,
  notThese: { customers: [], heads: [] },
})

const id = text().min(1).max(64)
const version = z.number().int().positive()

export const changeJobSchema = z.object({
  jobId: id,
  version,
  promiseOn: day,
  urgent: z.boolean(),
  note: words(1000),
  partsPlace: words(60),
  /** Why promise or target change. */
  reason: words(300).default(''),
  visits: z
    .array(
      z.object({
        visitId: id,
        version,
        target: optionalFigure('chamberVolume'),
        side: words(60),
        rackPlace: words(60),
      }),
    )
    .max(16),
})
export type ChangeJobForm = z.input<typeof changeJobSchema>
export type ChangeJobInput = z.output<typeof changeJobSchema>

export const changeEngineSchema = z.object({ jobId: id, version, engine: engineFields })
export type ChangeEngineForm = z.input<typeof changeEngineSchema>
export type ChangeEngineInput = z.output<typeof changeEngineSchema>

export const changeOrderedWorkSchema = z
  .object({
    jobId: id,
    /** The heads it is for, with the version that was looked at. */
    visits: z
      .array(z.object({ visitId: id, version }))
      .min(1, 'Choose at least one head.')
      .max(16),
    add: z.array(orderedWork).max(60),
    end: z.array(workId).max(60),
    reason: requiredText('Enter why the order changes.', 300),
  })
  .refine(({ add, end }) => add.length + end.length > 0, {
    path: ['add'],
    message: 'No change yet. Add or remove work first.',
  })
export type ChangeOrderedWorkInput = z.output<typeof changeOrderedWorkSchema>

export const paymentKinds = ['deposit', 'payment', 'refund'] as const
export const takePaymentSchema = z.object({
  jobId: id,
  kind: z.enum(paymentKinds),
  amount,
  method: z.enum(paymentMethods, 'Choose how it is paid.'),
  how: words(60),
  /** More than is owed, and that is meant. */
  confirmed: z.boolean(),
})
export type TakePaymentInput = z.output<typeof takePaymentSchema>

export const addPriceLineSchema = pricedLine.extend({ jobId: id })
export type AddPriceLineInput = z.output<typeof addPriceLineSchema>

const whyChanged = requiredText('Enter the reason.', 200)

/** One line, as it is to read from now on. A discount has one piece, and its amount is taken off. */
export const changePriceLineSchema = pricedLine.extend({ jobId: id, lineId: id, version, why: whyChanged })
export type ChangePriceLineForm = z.input<typeof changePriceLineSchema>
export type ChangePriceLineInput = z.output<typeof changePriceLineSchema>

export const addDiscountSchema = z.object({
  jobId: id,
  amount,
  tax: taxChoice,
  reason: requiredText('Enter why the discount is given.', 120),
})
export type AddDiscountInput = z.output<typeof addDiscountSchema>

export const endPriceLineSchema = z.object({ jobId: id, lineId: id, why: whyChanged })
export type EndPriceLineInput = z.output<typeof endPriceLineSchema>

export const logCallSchema = z.object({ jobId: id, text: requiredText('Enter what was said.', 1000) })
export type LogCallInput = z.output<typeof logCallSchema>

/** What somebody types or scans into the Find box. */
export const findSchema = z.object({ q: words(120) })
