'use server'
import { addCastingSchema, changeCastingSchema, retireCastingSchema } from '@/lib/schemas/casting'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { changeCasting } from '@/lib/use-cases/castings/change-casting'
import { retireCasting } from '@/lib/use-cases/back-room/retire'
import { defineAction } from '@/lib/web/define-action'

export const addCastingAction = defineAction(
  'addCasting',
  addCastingSchema,
  addCasting,
  ({ castingId }) => `/back-room/castings/${castingId}`,
)
export const changeCastingAction = defineAction(
  'changeCasting',
  changeCastingSchema,
  changeCasting,
  ({ castingId }) => `/back-room/castings/${castingId}`,
)
export const retireCastingAction = defineAction('retireCasting', retireCastingSchema, retireCasting)
