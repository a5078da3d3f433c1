'use server'
import { receiveOutsideSchema, repromiseSchema, sendOutsideSchema } from '@/lib/schemas/outside'
import { endWaitSchema } from '@/lib/schemas/visit'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { repromise } from '@/lib/use-cases/outside/repromise'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { endWait } from '@/lib/use-cases/waits/end-wait'
import { defineAction } from '@/lib/web/define-action'

export const sendOutsideAction = defineAction('sendOutside', sendOutsideSchema, sendOutside)
export const receiveOutsideAction = defineAction('receiveOutside', receiveOutsideSchema, receiveOutside)
export const repromiseAction = defineAction('repromise', repromiseSchema, repromise)
export const endWaitAction = defineAction('endWait', endWaitSchema, endWait)
