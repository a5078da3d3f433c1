'use server'
import { answerFindingSchema, askFindingSchema, changeAnswerSchema } from '@/lib/schemas/finding'
import { answerFinding } from '@/lib/use-cases/findings/answer-finding'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { changeAnswer } from '@/lib/use-cases/findings/change-answer'
import { defineAction } from '@/lib/web/define-action'

export const askFindingAction = defineAction('askFinding', askFindingSchema, askFinding)
export const answerFindingAction = defineAction('answerFinding', answerFindingSchema, answerFinding)
export const changeAnswerAction = defineAction('changeAnswer', changeAnswerSchema, changeAnswer)
