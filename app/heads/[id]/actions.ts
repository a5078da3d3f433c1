'use server'
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
