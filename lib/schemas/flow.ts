import { z } from 'zod'
import { words } from './figure'
import { readingEntry } from './visit'

const several = z.union([z.uuid().transform((one) => [one]), z.array(z.uuid()).max(12)])

/** The address of a comparison: which runs, and which of them the others are held against. Unreadable: nothing chosen. */
export const flowChoiceSchema = z.object({
  run: several.default([]).catch([]),
  from: z.uuid().nullable().default(null).catch(null),
})
export type FlowChoice = z.output<typeof flowChoiceSchema>

/** A flow run of a casting that belongs to no job: what others are held against. */
export const referenceRunSchema = z.object({
  castingId: z.string().min(1).max(60),
  readings: z
    .array(readingEntry)
    .max(200)
    .refine((all) => all.every(({ kind }) => kind === 'flow'), 'Only flow is read here.'),
  conditions: z.record(z.string().max(40), words(200)),
})
export type ReferenceRun = z.output<typeof referenceRunSchema>
