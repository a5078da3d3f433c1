'use server'
import { setOwnPinSchema } from '@/lib/schemas/person'
import { setOwnPin } from '@/lib/use-cases/people/set-own-pin'
import { defineAction } from '@/lib/web/define-action'

export const setOwnPinAction = defineAction('setOwnPin', setOwnPinSchema, setOwnPin)
