'use server'
import { referenceRunSchema } from '@/lib/schemas/flow'
import { recordReference } from '@/lib/use-cases/flow/record-reference'
import { defineAction } from '@/lib/web/define-action'

export const recordReferenceAction = defineAction('recordReference', referenceRunSchema, recordReference)
