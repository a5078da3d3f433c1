'use server'
import {
  acceptOrderSchema,
  changeOrderSchema,
  chooseMarksSchema,
  confirmOutsideSchema,
  leaveMarginSchema,
  noteOutsideCostSchema,
  receiveOutsideSchema,
  rejectOutsideSchema,
  repromiseSchema,
  sendOutsideSchema,
} from '@/lib/schemas/outside'
import { endSupplySchema, orderSupplySchema, receiveSupplySchema, repromiseSupplySchema } from '@/lib/schemas/supply'
import { endWaitSchema } from '@/lib/schemas/visit'
import { acceptOrder } from '@/lib/use-cases/outside/accept-order'
import { changeOrder } from '@/lib/use-cases/outside/change-order'
import { chooseMarks } from '@/lib/use-cases/outside/choose-marks'
import { confirmOutside } from '@/lib/use-cases/outside/confirm-outside'
import { leaveMargin } from '@/lib/use-cases/plans/leave-margin'
import { noteOutsideCost } from '@/lib/use-cases/outside/note-cost'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { rejectOutside } from '@/lib/use-cases/outside/reject-outside'
import { repromise } from '@/lib/use-cases/outside/repromise'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { endSupply } from '@/lib/use-cases/supply/end-supply'
import { orderSupply } from '@/lib/use-cases/supply/order-supply'
import { receiveSupply } from '@/lib/use-cases/supply/receive-supply'
import { repromiseSupply } from '@/lib/use-cases/supply/repromise-supply'
import { endWait } from '@/lib/use-cases/waits/end-wait'
import { defineAction } from '@/lib/web/define-action'

export const sendOutsideAction = defineAction(
  'sendOutside',
  sendOutsideSchema,
  sendOutside,
  ({ orderId }) => `/away/${orderId}`,
)
export const receiveOutsideAction = defineAction('receiveOutside', receiveOutsideSchema, receiveOutside)
export const repromiseAction = defineAction('repromise', repromiseSchema, repromise)
export const acceptOrderAction = defineAction('acceptOrder', acceptOrderSchema, acceptOrder)
export const changeOrderAction = defineAction('changeOrder', changeOrderSchema, changeOrder)
export const noteOutsideCostAction = defineAction('noteOutsideCost', noteOutsideCostSchema, noteOutsideCost)
export const rejectOutsideAction = defineAction('rejectOutside', rejectOutsideSchema, rejectOutside)
export const chooseMarksAction = defineAction('chooseMarks', chooseMarksSchema, chooseMarks)
export const confirmOutsideAction = defineAction('confirmOutside', confirmOutsideSchema, confirmOutside)
export const leaveMarginAction = defineAction('leaveMargin', leaveMarginSchema, leaveMargin)
export const endWaitAction = defineAction('endWait', endWaitSchema, endWait)
export const orderSupplyAction = defineAction(
  'orderSupply',
  orderSupplySchema,
  orderSupply,
  ({ orderId }) => `/away/supply/${orderId}`,
)
export const receiveSupplyAction = defineAction('receiveSupply', receiveSupplySchema, receiveSupply)
export const repromiseSupplyAction = defineAction('repromiseSupply', repromiseSupplySchema, repromiseSupply)
export const endSupplyAction = defineAction('endSupply', endSupplySchema, endSupply)
