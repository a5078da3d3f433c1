'use server'
import {
  addPriceLineSchema,
  changeEngineSchema,
  changeJobSchema,
  changeOrderedWorkSchema,
  endPriceLineSchema,
  logCallSchema,
  takePaymentSchema,
} from '@/lib/schemas/job'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { changeEngine } from '@/lib/use-cases/jobs/change-engine'
import { changeJob } from '@/lib/use-cases/jobs/change-job'
import { changeOrderedWork } from '@/lib/use-cases/jobs/change-ordered-work'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { defineAction } from '@/lib/web/define-action'

export const changeJobAction = defineAction('changeJob', changeJobSchema, changeJob)
export const changeOrderedWorkAction = defineAction('changeOrderedWork', changeOrderedWorkSchema, changeOrderedWork)
export const changeEngineAction = defineAction('changeEngine', changeEngineSchema, changeEngine)
export const addPriceLineAction = defineAction('addPriceLine', addPriceLineSchema, addPriceLine)
export const endPriceLineAction = defineAction('endPriceLine', endPriceLineSchema, endPriceLine)
export const takePaymentAction = defineAction('takePayment', takePaymentSchema, takePayment)
export const logCallAction = defineAction('logCall', logCallSchema, logCall)
