'use server'
import {
  applyRulesSchema,
  changeStepSchema,
  nameStationsSchema,
  ownStepSchema,
  restoreRulesSchema,
} from '@/lib/schemas/rules'
import { applyRules } from '@/lib/use-cases/rules/apply-rules'
import { changeRulesSeen, restoreRules, type ChangeAnswer } from '@/lib/use-cases/rules/change-rules-seen'
import { defineAction } from '@/lib/web/define-action'

/** The page stays while a change is only shown. */
const onceMade = ({ kind }: ChangeAnswer) => (kind === 'made' ? '/back-room/steps' : undefined)

export const nameStationsAction = defineAction('nameStations', nameStationsSchema, changeRulesSeen, onceMade)
export const changeStepAction = defineAction('changeStep', changeStepSchema, changeRulesSeen, onceMade)
export const ownStepAction = defineAction('ownStep', ownStepSchema, changeRulesSeen, onceMade)
export const restoreRulesAction = defineAction('restoreRules', restoreRulesSchema, restoreRules, onceMade)
export const applyRulesAction = defineAction('applyRules', applyRulesSchema, applyRules, () => '/back-room/steps')
