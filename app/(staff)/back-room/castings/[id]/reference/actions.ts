'use server'
import { correctReferenceSchema, referenceRunSchema } from '@/lib/schemas/flow'
import { correctReference } from '@/lib/use-cases/flow/correct-reference'
import { recordReference } from '@/lib/use-cases/flow/record-reference'
import { defineAction } from '@/lib/web/define-action'

export const recordReferenceAction = defineAction(
  'recordReference',
  referenceRunSchema,
  recordReference,
  (_, { castingId }) => `/back-room/castings/${castingId}`,
)
export const correctReferenceAction = defineAction('correctReference', correctReferenceSchema, correctReference)
