'use server'
import {
  addPersonSchema,
  changePersonSchema,
  clearPinSchema,
  retirePersonSchema,
  ofPersonSchema,
} from '@/lib/schemas/person'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { changePerson } from '@/lib/use-cases/people/change-person'
import { clearPin } from '@/lib/use-cases/people/clear-pin'
import { liftPersonWaits } from '@/lib/use-cases/people/lift-waits'
import { makeResetLink } from '@/lib/use-cases/people/make-reset-link'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { clearFactor } from '@/lib/use-cases/people/second-factor'
import { defineAction } from '@/lib/web/define-action'

export const addPersonAction = defineAction(
  'addPerson',
  addPersonSchema,
  addPerson,
  ({ personId }) => `/back-room/people/${personId}`,
)
export const changePersonAction = defineAction(
  'changePerson',
  changePersonSchema,
  changePerson,
  () => '/back-room/people',
)
export const makeResetLinkAction = defineAction('makeResetLink', ofPersonSchema, makeResetLink)
export const liftWaitsAction = defineAction('liftWaits', ofPersonSchema, liftPersonWaits)
export const clearFactorAction = defineAction('clearFactor', ofPersonSchema, clearFactor)
export const clearPinAction = defineAction('clearPin', clearPinSchema, clearPin)
export const retirePersonAction = defineAction('retirePerson', retirePersonSchema, retirePerson)
