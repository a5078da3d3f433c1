'use server'
import { receiveOutsideSchema, repromiseSchema, sendOutsideSchema } from '@/lib/schemas/outside'
import {
  endSupplySchema,
  orderSupplySchema,
  receiveSupplySchema,
  repromiseSupplySchema,
} from '@/lib/schemas/supply'
import { endWaitSchema } from '@/lib/schemas/visit'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { repromise } from '@/lib/use-cases/outside/repromise'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { endSupply } from '@/lib/use-cases/supply/end-supply'
import { orderSupply } from '@/lib/use-cases/supply/order-supply'
import { receiveSupply } from '@/lib/use-cases/supply/receive-supply'
import { repromiseSupply } from '@/lib/use-cases/supply/repromise-supply'
import { endWait } from '@/lib/use-cases/waits/end-wait'
import { defineAction } from '@/lib/web/define-action'

export const sendOutsideAction = defineAction('sendOutside', sendOutsideSchema, sendOutside)
export const receiveOutsideAction = defineAction('receiveOutside', receiveOutsideSchema, receiveOutside)
export const repromiseAction = defineAction('repromise', repromiseSchema, repromise)
export const endWaitAction = defineAction('endWait', endWaitSchema, endWait)
export const orderSupplyAction = defineAction('orderSupply', orderSupplySchema, orderSupply)
export const receiveSupplyAction = defineAction('receiveSupply', receiveSupplySchema, receiveSupply)
export const repromiseSupplyAction = defineAction('repromiseSupply', repromiseSupplySchema, repromiseSupply)
export const endSupplyAction = defineAction('endSupply', endSupplySchema, endSupply)
