'use server'
import { ruleOnCutSchema } from '@/lib/schemas/casting'
import { changeTagSchema, takeOffTagSchema } from '@/lib/schemas/tag'
import { ruleOnCut } from '@/lib/use-cases/castings/rule-on-cut'
import { changeTag } from '@/lib/use-cases/heads/change-tag'
import { takeOffTag } from '@/lib/use-cases/heads/take-off-tag'
import { releaseVisitSchema } from '@/lib/schemas/release'
import { correctReadingSchema, decideHoldSchema, returnAsIsSchema, waiveGapSchema } from '@/lib/schemas/visit'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { waiveGap } from '@/lib/use-cases/visits/waive-gap'
import { defineAction } from '@/lib/web/define-action'

export const releaseVisitAction = defineAction('releaseVisit', releaseVisitSchema, releaseVisit)
export const waiveGapAction = defineAction('waiveGap', waiveGapSchema, waiveGap)
export const returnAsIsAction = defineAction('returnAsIs', returnAsIsSchema, returnAsIs)
export const decideHoldAction = defineAction('decideHold', decideHoldSchema, decideHold)
export const correctReadingAction = defineAction('correctReading', correctReadingSchema, correctReading)
export const changeTagAction = defineAction('changeTag', changeTagSchema, changeTag)
export const takeOffTagAction = defineAction('takeOffTag', takeOffTagSchema, takeOffTag)
export const ruleOnCutAction = defineAction('ruleOnCut', ruleOnCutSchema, ruleOnCut)
