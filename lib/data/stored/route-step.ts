import { z } from 'zod'
import { readingKinds } from '@/lib/core/readings/types'
import type { Lack, OrderName, Reason, Said, Wait, Why } from '@/lib/core/route/codes'
import { causes } from '@/lib/core/route/do-again'
import type { Rework } from '@/lib/core/route/head-marks'
import { ownConditionIds } from '@/lib/core/route/own-conditions'
import { cutKinds, isStepId, type StepId, type StepKey } from '@/lib/core/route/step-ids'
import type { Owed, RouteStep } from '@/lib/core/route/types'
import { storedObject, type Fields } from './stored-json'

/** What a stored route step holds beside the columns of its row. */
export type StepDetail = Omit<RouteStep, 'stepId' | 'occurrence' | 'orderId' | 'label' | 'station' | 'state'> & {
  /** Of a step in a queue: what was measured on the head and is out of tolerance; left out: nothing. */
  readonly out?: readonly Lack[]
  /** The same of what is to be put right on it. */
  readonly rework?: readonly Rework[]
}

const text = z.string()
const lengthIn = z.number()
const cutKind = z.enum(cutKinds)
const said = z.object({ code: z.literal('said'), text } satisfies Fields<Said>)
const order = z.object({ vendor: text, number: text } satisfies Fields<OrderName>)
const stepId = z.custom<StepId>((id) => typeof id === 'string' && isStepId(id), 'no such step')
const stepKey = z.object({ stepId, occurrence: text, orderId: text.nullable() } satisfies Fields<StepKey>)

const why = z.discriminatedUnion('code', [
  z.object({
    code: z.enum(['ordered', 'every-head', 'used-head', 'overheated', 'break-through', 'valves-renewed', 'flat-deck']),
  }),
  z.object({
    code: z.enum(['target', 'class-limit', 'engine-known', 'chamber-too-small', 'flat-ordered', 'flat-part']),
  }),
  z.object({ code: z.enum(['cam-in-head', 'seat-check-failed', 'edge-left', 'clean-up-thickness', 'cut-by-maker']) }),
  z.object({ code: z.enum(['after-machining', 'came-assembled', 'assembly-ordered']) }),
  z.object({ code: z.literal('cut'), kind: cutKind }),
  z.object({ code: z.enum(['sent-out', 'comes-back']), order }),
  z.object({ code: z.literal('after-work'), steps: z.array(stepId) }),
  z.object({ code: z.literal('flat-left'), leftIn: lengthIn }),
  z.object({ code: z.literal('angle-manifold'), isKnown: z.boolean() }),
  z.object({
    code: z.literal('past-limit'),
    what: z.enum(['intake-side', 'metal-removed', 'cut', 'clean-up', 'ptv-loss']),
    valueIn: lengthIn,
    limitIn: lengthIn,
  }),
  z.object({ code: z.literal('ptv-left'), leftIn: lengthIn, limitIn: lengthIn }),
  z.object({ code: z.literal('own'), condition: z.enum(ownConditionIds), limitIn: lengthIn.nullable() }),
  said,
]) satisfies z.ZodType<Why>

const reason = z.discriminatedUnion('code', [
  z.object({ code: z.enum(['more-readings', 'seat-check-failed', 'not-asked', 'not-rinsed']) }),
  z.object({ code: z.literal('undone'), cause: z.enum(causes) }),
  z.object({ code: z.literal('angle-short'), shortIn: lengthIn }),
  z.object({ code: z.literal('rejected'), why: text }),
  z.object({ code: z.literal('plan-now'), kind: cutKind }),
  said,
]) satisfies z.ZodType<Reason>

const wait = z.discriminatedUnion('code', [
  z.object({ code: z.literal('step'), step: stepKey, label: text }),
  z.object({ code: z.literal('parts'), what: text }),
  z.object({ code: z.enum(['hold', 'arrival', 'plan', 'release']) }),
  z.object({ code: z.enum(['away', 'send-out']), order }),
  said,
]) satisfies z.ZodType<Wait>

const owed = z.object({
  kind: z.enum(readingKinds),
  label: text,
  points: z.array(text),
  missing: z.array(text),
  optional: z.literal(true).optional(),
} satisfies Fields<Owed>)

/** Written by the code that reads it, and anew with each change of the head; a code is never taken out. */
const coded = z.object({ code: text })
const lack = z.custom<Lack>((value) => coded.safeParse(value).success, 'no lack')

const rework = z.discriminatedUnion('from', [
  z.object({ from: z.literal('owner'), text }),
  z.object({ from: z.literal('vendor'), order, text }),
]) satisfies z.ZodType<Rework>

const detail = z.object({
  why: why.nullable(),
  reason: reason.nullable(),
  isNew: z.boolean(),
  waitsFor: z.array(wait),
  owes: z.array(owed),
  outside: z.boolean(),
  doneSeq: z.number().int().nullable(),
  byVendor: order.nullable(),
  out: z.array(lack).optional(),
  rework: z.array(rework).optional(),
} satisfies Fields<StepDetail>) satisfies z.ZodType<StepDetail>

const sentence = text.transform((words): Said | null => (words === '' ? null : { code: 'said', text: words }))

// Sentences in the place of codes: they stay until the next change of the head writes the row anew.

const detailWithVendorWords = detail.extend({
  byVendor: text.transform((words): OrderName | null => (words === '' ? null : { vendor: words, number: '' })),
})

const detailInSentences = detailWithVendorWords.extend({
  why: sentence,
  reason: sentence,
  waitsFor: z.array(text.transform((words): Said => ({ code: 'said', text: words }))),
})

export const stepDetail = storedObject<StepDetail>('RouteStep.detail', detailInSentences, detailWithVendorWords, detail)
