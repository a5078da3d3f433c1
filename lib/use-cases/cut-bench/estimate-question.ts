import { chamberShapes, type ChamberShape } from '@/lib/core/casting/chamber-shape'
import { z } from 'zod'
import { storedObject } from '@/lib/data/stored/stored-json'
import { benchForm } from '@/lib/schemas/bench'
import { emptyBench, type BenchForm } from '@/lib/schemas/bench-question'

/** A question as it was typed, with what stood on the casting's record. */
export type EstimateQuestion = BenchForm & { readonly castingName: string; readonly chamberShape: ChamberShape }

/** What a question that was kept before a field existed does not have is empty. */
const question = benchForm
  .partial()
  .extend({ castingName: z.string(), chamberShape: z.enum(chamberShapes) })
  .transform((kept): EstimateQuestion => ({ ...emptyBench(), ...kept }))

export const estimateQuestion = storedObject<EstimateQuestion>('Estimate.question', question)
