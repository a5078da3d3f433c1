'use server'
import { applyRulesSchema, changeStepSchema, nameStationsSchema, ownStepSchema } from '@/lib/schemas/rules'
import { applyRules } from '@/lib/use-cases/rules/apply-rules'
import { changeRules } from '@/lib/use-cases/rules/change-rules'
import { defineAction } from '@/lib/web/define-action'

export const nameStationsAction = defineAction(
  'nameStations',
  nameStationsSchema,
  changeRules,
  () => '/back-room/steps',
)
export const changeStepAction = defineAction('changeStep', changeStepSchema, changeRules, () => '/back-room/steps')
export const ownStepAction = defineAction('ownStep', ownStepSchema, changeRules, () => '/back-room/steps')
export const applyRulesAction = defineAction('applyRules', applyRulesSchema, applyRules, () => '/back-room/steps')
