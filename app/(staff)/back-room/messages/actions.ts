'use server'
import { changeMailServerSchema, changeTextSchema, testMailSchema } from '@/lib/schemas/message'
import { changeMailServer } from '@/lib/use-cases/messages/change-mail-server'
import { changeText } from '@/lib/use-cases/messages/change-text'
import { sendTestMail } from '@/lib/use-cases/messages/send-test-mail'
import { defineAction } from '@/lib/web/define-action'

export const changeTextAction = defineAction('changeText', changeTextSchema, changeText)
export const changeMailServerAction = defineAction('changeMailServer', changeMailServerSchema, changeMailServer)
export const sendTestMailAction = defineAction('sendTestMail', testMailSchema, sendTestMail)
