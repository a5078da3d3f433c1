import { z } from 'zod'
import { castingFigureKeys, type CastingFigureKey } from '@/lib/core/casting/figures'
import { wayKinds } from '@/lib/core/options/bench-types'
import type { EstimateAnswer, EstimateLine } from '@/lib/core/options/estimate'
import { isStepId, type StepId } from '@/lib/core/route/step-ids'
import { cautions, cautionsAsSaid } from './cut-cautions'
import { storedObject, type Fields } from './stored-json'

const text = z.string()
const texts = z.array(text)
const lines = z.array(z.object({ label: text, value: text, note: text } satisfies Fields<EstimateLine>))

const fields = {
  kind: z.enum(wayKinds),
  title: text,
  start: text,
  effort: text,
  lines,
  groups: z.array(z.object({ title: text, lines })),
  unknown: z.array(z.object({ label: text, needs: texts })),
  steps: z.array(
    z.object({
      label: text,
      outside: z.boolean(),
      stepId: z.custom<StepId>((id) => typeof id === 'string' && isStepId(id)).optional(),
      unitMinor: z.number().nullable().optional(),
    }),
  ),
  from: z.object({ source: z.enum(['customer', 'bought', 'bought-cut']), costMinor: z.number().nullable() }).optional(),
  days: z.number().nullable(),
  priceMinor: z.number().nullable(),
  unpriced: texts,
  cautions,
  others: z.array(z.object({ title: text, start: text, why: text })),
  drawing: z.object({
    casting: z.partialRecord(z.enum(castingFigureKeys as [CastingFigureKey, ...CastingFigureKey[]]), z.number()),
    deepEdge: z.enum(['intake', 'exhaust']),
    cut: z.object({ flatIn: z.number(), angleIn: z.number(), angleDeg: z.number().nullable() }),
  } satisfies Fields<EstimateAnswer['drawing']>),
} satisfies Fields<EstimateAnswer>

export const estimateAnswer = storedObject<EstimateAnswer>(
  'Estimate.answer',
  z.object({ ...fields, cautions: cautionsAsSaid }),
  z.object(fields),
)
