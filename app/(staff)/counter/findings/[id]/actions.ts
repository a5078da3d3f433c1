'use server'
import { answerFindingSchema, askFindingSchema } from '@/lib/schemas/finding'
import { answerFinding } from '@/lib/use-cases/findings/answer-finding'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { defineAction } from '@/lib/web/define-action'

export const askFindingAction = defineAction('askFinding', askFindingSchema, askFinding)
export const answerFindingAction = defineAction('answerFinding', answerFindingSchema, answerFinding)
