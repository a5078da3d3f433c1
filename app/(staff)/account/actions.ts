'use server'
import { changeOwnPasswordSchema, confirmFactorSchema, noInputSchema, setOwnPinSchema } from '@/lib/schemas/person'
import { changeOwnPassword } from '@/lib/use-cases/people/change-own-password'
import { confirmFactor, dropOwnFactor, renewCodes, startFactor } from '@/lib/use-cases/people/second-factor'
import { setOwnPin } from '@/lib/use-cases/people/set-own-pin'
import { defineAction } from '@/lib/web/define-action'

export const setOwnPinAction = defineAction('setOwnPin', setOwnPinSchema, setOwnPin)
export const changeOwnPasswordAction = defineAction(
  'changeOwnPassword',
  changeOwnPasswordSchema,
  changeOwnPassword,
  () => '/sign-in?said=password',
)
export const startFactorAction = defineAction('startFactor', noInputSchema, startFactor)
export const confirmFactorAction = defineAction('confirmFactor', confirmFactorSchema, confirmFactor)
export const renewCodesAction = defineAction('renewCodes', noInputSchema, renewCodes)
export const dropFactorAction = defineAction('dropFactor', noInputSchema, dropOwnFactor)
