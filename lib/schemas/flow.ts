import { z } from 'zod'
import { requiredText, words } from './figure'
import { readingEntry } from './visit'
import { text } from './text'

const several = z.union([z.uuid().transform((one) => [one]), z.array(z.uuid()).max(12)])

/** The address of a comparison: which runs, and which of them the others are held against. Unreadable: nothing chosen. */
export const flowChoiceSchema = z.object({
  run: several.default([]).catch([]),
  from: z.uuid().nullable().default(null).catch(null),
})
export type FlowChoice = z.output<typeof flowChoiceSchema>

/** A flow run of a casting that belongs to no job: what others are held against. */
export const referenceRunSchema = z.object({
  castingId: text().min(1).max(60),
  readings: z
    .array(readingEntry)
    .max(200)
    .refine((all) => all.every(({ kind }) => kind === 'flow'), 'Enter flow figures only.'),
  conditions: z.record(text().max(40), words(200)),
})
export type ReferenceRun = z.output<typeof referenceRunSchema>

/** One lift of a reference run corrected, or, with no reading named, the whole run withdrawn. */
export const correctReferenceSchema = z
  .object({
    castingId: text().min(1).max(60),
    runId: z.uuid(),
    readingId: z.uuid().nullable(),
    correction: z.enum(['replace', 'withdraw']),
    text: words(40),
    reason: requiredText('Enter the reason for the correction.', 300),
  })
  .refine(({ readingId, correction }) => readingId !== null || correction === 'withdraw', {
    path: ['text'],
    message: 'A whole run can only be withdrawn. To correct it, correct each lift.',
  })
export type CorrectReference = z.output<typeof correctReferenceSchema>
