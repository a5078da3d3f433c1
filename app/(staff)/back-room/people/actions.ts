'use server'
import {
  addPersonSchema,
  changePersonSchema,
  clearPinSchema,
  retirePersonSchema,
  setPasswordSchema,
} from '@/lib/schemas/person'
import { addPerson } from '@/lib/use-cases/people/add-person'
import { changePerson } from '@/lib/use-cases/people/change-person'
import { clearPin } from '@/lib/use-cases/people/clear-pin'
import { retirePerson } from '@/lib/use-cases/people/retire-person'
import { setPassword } from '@/lib/use-cases/people/set-password'
import { defineAction } from '@/lib/web/define-action'

export const addPersonAction = defineAction('addPerson', addPersonSchema, addPerson, () => '/back-room/people')
export const changePersonAction = defineAction(
  'changePerson',
  changePersonSchema,
  changePerson,
  () => '/back-room/people',
)
export const setPasswordAction = defineAction('setPassword', setPasswordSchema, setPassword)
export const clearPinAction = defineAction('clearPin', clearPinSchema, clearPin)
export const retirePersonAction = defineAction('retirePerson', retirePersonSchema, retirePerson)
