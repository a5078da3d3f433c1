import { z } from 'zod'
import { readingKinds } from '@/lib/core/readings/types'
import { requiredText, words } from './figure'
import { stepIdSchema } from './step'
import { text } from './text'

export const stepKey = z.object({
  stepId: stepIdSchema,
  occurrence: text().max(40),
  orderId: z.uuid().nullable(),
})

/** One answer as it comes from the keypad or the form. */
export const readingEntry = z.object({
  kind: z.enum(readingKinds),
  point: text().max(40),
  text: words(500),
  /** Why it could not be taken; null when it was. */
  notTaken: words(200).nullable(),
  /** Of a chamber that has a value: 'again', or the id of the reading it stands in the place of. */
  repeat: text().max(40).optional(),
  /** An unlikely figure as it was typed the second time. */
  again: words(500).optional(),
  /** What it was read with; left out: what the whole go was read with. */
  instrumentId: z.uuid().nullable().optional(),
  /** It comes with “All alike”: nobody measured it at this point. */
  filled: z.boolean().optional(),
})

/** The step as the person saw it: `seen` is the number of its last event, so that a change made elsewhere shows. */
const seenStep = { visitId: z.uuid(), step: stepKey, seen: z.number().int().min(0) }

export const entrySchema = z.object({
  readings: z.array(readingEntry).max(400),
  instrumentId: z.uuid().nullable(),
  /** Checking valves, plug, bench conditions, by name. */
  conditions: z.record(text().max(40), words(200)),
  takenAt: z.iso.datetime().nullable(),
})
export type Entry = z.output<typeof entrySchema>

/** `since`: where "Keep mine" repeats a deed as the step is seen now, what was seen when it was asked for first. */
const keptStep = { ...seenStep, since: seenStep.seen.optional() }
export const recordReadingsSchema = z.object({ ...keptStep, entry: entrySchema })
export const tickStepSchema = z.object({ ...keptStep, entry: entrySchema.nullable() })
export const startStepSchema = z.object(seenStep)
/** Another person looks before a deep cut: one chamber read, plan and head confirmed. */
export const secondCheckSchema = z.object({
  ...seenStep,
  /** Both empty on a flat deck, which has no chamber. */
  chamber: text().regex(/^\d{0,2}$/, 'Choose the chamber.'),
  text: words(40),
  instrumentId: z.uuid().nullable(),
  planConfirmed: z.literal(true, { error: 'Confirm the plan.' }),
  headConfirmed: z.literal(true, { error: 'Confirm the head.' }),
})
export const undoTickSchema = z.object({ ...seenStep, reason: words(300) })

export const correctReadingSchema = z.object({
  visitId: z.uuid(),
  readingId: z.uuid(),
  correction: z.enum(['replace', 'withdraw']),
  text: words(500),
  again: words(500).optional(),
  reason: requiredText('Enter the reason for the correction.', 300),
})

/** `was`: what the page showed, so that a move in between is seen. */
export const setRackPlaceSchema = z.object({ visitId: z.uuid(), rackPlace: words(60), was: words(60) })

export const openHoldSchema = z.object({
  visitId: z.uuid(),
  stepId: stepIdSchema.nullable(),
  reason: requiredText('Enter what is wrong.', 500),
})

export const holdDecisions = ['use-as-is', 'rework', 'scrap', 'return-as-is'] as const
export const decideHoldSchema = z
  .object({
    holdId: z.uuid(),
    version: z.number().int(),
    decision: z.enum(holdDecisions, 'Choose what happens next.'),
    note: requiredText('Enter the reason.', 500),
    customerYes: words(200),
  })
  .refine((input) => input.decision !== 'use-as-is' || input.customerYes !== '', {
    path: ['customerYes'],
    message: 'Use as is needs the customer’s yes. Enter who said so and when.',
  })

export const waiveGapSchema = z.object({
  visitId: z.uuid(),
  gap: text().max(200),
  reason: requiredText('Enter why it may be waived.', 500),
})

export const returnAsIsSchema = z.object({
  visitId: z.uuid(),
  reason: requiredText('Enter why it is returned.', 500),
})

export const reportFindingSchema = z.object({
  visitId: z.uuid(),
  stepId: stepIdSchema.nullable(),
  what: requiredText('Enter what was found.', 1000),
})

export const partsWaitSchema = z.object({
  visitId: z.uuid(),
  step: stepKey,
  what: requiredText('Enter what it is waiting for.', 200),
  fromWhom: words(200),
  promisedOn: text()
    .regex(/^(\d{4}-\d{2}-\d{2})?$/, 'Pick a day.')
    .transform((day) => (day === '' ? null : day)),
})
export const endWaitSchema = z.object({ waitId: z.uuid(), version: z.number().int() })
