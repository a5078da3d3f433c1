'use server'
import { keepEstimateSchema } from '@/lib/schemas/bench'
import { keepEstimate } from '@/lib/use-cases/cut-bench/keep-estimate'
import { defineAction } from '@/lib/web/define-action'

export const keepEstimateAction = defineAction(
  'keepEstimate',
  keepEstimateSchema,
  keepEstimate,
  ({ id }) => `/cut-bench/kept/${id}`,
)
