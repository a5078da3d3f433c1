import { z } from 'zod'
import { castingFigureKeys, type CastingFigureKey } from '@/lib/core/casting/figures'
import { camAnswers } from '@/lib/core/engine/cam-answer'
import { engineFigureKeys, type EngineFigureKey } from '@/lib/core/engine/figures'
import { readBench, type BenchForm } from './bench-question'
import { requiredText, words } from './figure'
import { text as anyText } from './text'

const text = anyText().trim().max(200)

/** The shape of a question to the cut bench. */
export const benchForm = z.object({
  castingId: text,
  presentCc: text,
  measured: z.boolean(),
  used: z.boolean(),
  goneIn: text,
  targetCc: text,
  stopAtIn: text,
  sinkIn: text,
  thicknessIn: text,
  thicknessNow: text,
  intakeRecession: text,
  exhaustRecession: text,
  protrusion: text,
  classFlatOnly: z.boolean(),
  classMinCc: text,
  classMaxCut: text,
  layout: z.enum(['inline', 'v', 'unknown']),
  camInHead: z.enum(camAnswers),
  engine: z.partialRecord(z.enum(engineFigureKeys as [EngineFigureKey, ...EngineFigureKey[]]), text),
  figures: z.partialRecord(z.enum(castingFigureKeys as [CastingFigureKey, ...CastingFigureKey[]]), text),
}) satisfies z.ZodType<BenchForm, BenchForm>

/** Keeps an answer: the question as it was typed, which way was chosen, and where on the line. */
export const keepEstimateSchema = z
  .object({
    question: benchForm,
    wayId: anyText().min(1, 'Choose a cut.').max(120),
    /** Angle part that the slider stands at, in inches; null: as the way proposes. */
    angleIn: z.number().min(0).max(0.5).nullable(),
    forWhom: requiredText('Enter who it is for.', 120),
    note: words(500),
  })
  .superRefine(({ question }, context) => {
    for (const [field, message] of Object.entries(readBench(question).errors)) {
      context.addIssue({ code: 'custom', path: ['question', ...field.split('.')], message })
    }
  })
export type KeepEstimateForm = z.input<typeof keepEstimateSchema>
export type KeepEstimateInput = z.output<typeof keepEstimateSchema>
