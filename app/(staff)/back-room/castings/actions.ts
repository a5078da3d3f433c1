'use server'
import { addCastingSchema, changeCastingSchema, retireCastingSchema, ruleOnCutSchema } from '@/lib/schemas/casting'
import { changeCastingWantedSchema } from '@/lib/schemas/wanted'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { changeCasting } from '@/lib/use-cases/castings/change-casting'
import { changeCastingWanted } from '@/lib/use-cases/castings/change-casting-wanted'
import { retireCasting } from '@/lib/use-cases/back-room/retire'
import { ruleOnCut } from '@/lib/use-cases/castings/rule-on-cut'
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
export const ruleOnCutAction = defineAction('ruleOnCut', ruleOnCutSchema, ruleOnCut)
export const changeCastingWantedAction = defineAction(
  'changeCastingWanted',
  changeCastingWantedSchema,
  changeCastingWanted,
)
