'use server'
import { acceptPlanSchema, planChoiceSchema } from '@/lib/schemas/plan'
import { acceptPlan } from '@/lib/use-cases/plans/accept-plan'
import { makePlanVersion } from '@/lib/use-cases/plans/make-plan-version'
import { defineAction } from '@/lib/web/define-action'

export const makePlanVersionAction = defineAction('makePlanVersion', planChoiceSchema, makePlanVersion)
export const acceptPlanAction = defineAction('acceptPlan', acceptPlanSchema, acceptPlan)
