'use server'
import { setOwnPinSchema } from '@/lib/schemas/person'
import { setOwnPin } from '@/lib/use-cases/people/set-own-pin'
import { defineAction } from '@/lib/web/define-action'
import { withOwnPassword } from '@/lib/web/throttle'

export const setOwnPinAction = defineAction('setOwnPin', setOwnPinSchema, (actor, input, moment) =>
  withOwnPassword(actor.personId, () => setOwnPin(actor, input, moment)),
)
