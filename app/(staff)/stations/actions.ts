'use server'
import {
  openHoldSchema,
  partsWaitSchema,
  recordReadingsSchema,
  reportFindingSchema,
  secondCheckSchema,
  startStepSchema,
  tickStepSchema,
  undoTickSchema,
} from '@/lib/schemas/visit'
import { cornerInsetSchema } from '@/lib/schemas/corner-inset'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { setCornerInset } from '@/lib/use-cases/settings/set-corner-inset'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { secondCheck } from '@/lib/use-cases/visits/second-check'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { openWait } from '@/lib/use-cases/waits/open-wait'
import { defineAction } from '@/lib/web/define-action'

export const tickStepAction = defineAction('tickStep', tickStepSchema, tickStep)
export const recordReadingsAction = defineAction('recordReadings', recordReadingsSchema, recordReadings)
export const startStepAction = defineAction('startStep', startStepSchema, startStep)
export const secondCheckAction = defineAction('secondCheck', secondCheckSchema, secondCheck)
export const undoTickAction = defineAction('undoTick', undoTickSchema, undoTick)
export const openHoldAction = defineAction('openHold', openHoldSchema, openHold)
export const reportFindingAction = defineAction('reportFinding', reportFindingSchema, reportFinding)
export const openWaitAction = defineAction('openWait', partsWaitSchema, openWait)
export const setCornerInsetAction = defineAction('setCornerInset', cornerInsetSchema, setCornerInset)
