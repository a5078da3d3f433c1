'use server'
import { logMessageSchema, mailDeedSchema, prepareMessageSchema, sendMessageSchema } from '@/lib/schemas/message'
import { logMessage } from '@/lib/use-cases/messages/log-message'
import { callInstead, tryMailAgain } from '@/lib/use-cases/messages/mail-deeds'
import { prepareMessage } from '@/lib/use-cases/messages/prepare-message'
import { sendMessage } from '@/lib/use-cases/messages/send-message'
import { defineAction } from '@/lib/web/define-action'

export const sendMessageAction = defineAction('sendMessage', sendMessageSchema, sendMessage)
export const prepareMessageAction = defineAction('prepareMessage', prepareMessageSchema, prepareMessage)
export const logMessageAction = defineAction('logMessage', logMessageSchema, logMessage)
export const tryMailAgainAction = defineAction('tryMailAgain', mailDeedSchema, tryMailAgain)
export const callInsteadAction = defineAction('callInstead', mailDeedSchema, callInstead)
