'use server'
import { changeTextSchema } from '@/lib/schemas/message'
import { changeText } from '@/lib/use-cases/messages/change-text'
import { defineAction } from '@/lib/web/define-action'

export const changeTextAction = defineAction('changeText', changeTextSchema, changeText)
