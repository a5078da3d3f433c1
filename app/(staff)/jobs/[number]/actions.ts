'use server'
import {
  addDiscountSchema,
  addPriceLineSchema,
  changeEngineSchema,
  changeJobSchema,
  changeOrderedWorkSchema,
  changePriceLineSchema,
  endPriceLineSchema,
  logCallSchema,
  takePaymentSchema,
} from '@/lib/schemas/job'
import { addHeadSchema, cancelJobSchema, takeOffHeadSchema, undoHandOverSchema } from '@/lib/schemas/ordinary'
import { voidPaymentSchema, writeInvoiceSchema } from '@/lib/schemas/money-papers'
import { changeHeadWantedSchema, changeJobWantedSchema } from '@/lib/schemas/wanted'
import { undoHandOver } from '@/lib/use-cases/hand-over/undo-hand-over'
import { addDiscount } from '@/lib/use-cases/jobs/add-discount'
import { addHead } from '@/lib/use-cases/jobs/add-head'
import { addPriceLine } from '@/lib/use-cases/jobs/add-price-line'
import { cancelJob } from '@/lib/use-cases/jobs/cancel-job'
import { changeEngine } from '@/lib/use-cases/jobs/change-engine'
import { changeHeadWanted } from '@/lib/use-cases/jobs/change-head-wanted'
import { changeJob } from '@/lib/use-cases/jobs/change-job'
import { changeJobWanted } from '@/lib/use-cases/jobs/change-job-wanted'
import { changeOrderedWork } from '@/lib/use-cases/jobs/change-ordered-work'
import { changePriceLine } from '@/lib/use-cases/jobs/change-price-line'
import { endPriceLine } from '@/lib/use-cases/jobs/end-price-line'
import { logCall } from '@/lib/use-cases/jobs/log-call'
import { takeOffHead } from '@/lib/use-cases/jobs/take-off-head'
import { takePayment } from '@/lib/use-cases/jobs/take-payment'
import { voidPayment } from '@/lib/use-cases/money/void-payment'
import { writeInvoice } from '@/lib/use-cases/money/write-invoice'
import { defineAction } from '@/lib/web/define-action'

export const changeJobAction = defineAction('changeJob', changeJobSchema, changeJob)
export const cancelJobAction = defineAction('cancelJob', cancelJobSchema, cancelJob)
export const addHeadAction = defineAction('addHead', addHeadSchema, addHead)
export const takeOffHeadAction = defineAction('takeOffHead', takeOffHeadSchema, takeOffHead)
export const undoHandOverAction = defineAction('undoHandOver', undoHandOverSchema, undoHandOver)
export const changeOrderedWorkAction = defineAction('changeOrderedWork', changeOrderedWorkSchema, changeOrderedWork)
export const changeEngineAction = defineAction('changeEngine', changeEngineSchema, changeEngine)
export const changeJobWantedAction = defineAction('changeJobWanted', changeJobWantedSchema, changeJobWanted)
export const changeHeadWantedAction = defineAction('changeHeadWanted', changeHeadWantedSchema, changeHeadWanted)
export const addPriceLineAction = defineAction('addPriceLine', addPriceLineSchema, addPriceLine)
export const changePriceLineAction = defineAction('changePriceLine', changePriceLineSchema, changePriceLine)
export const addDiscountAction = defineAction('addDiscount', addDiscountSchema, addDiscount)
export const endPriceLineAction = defineAction('endPriceLine', endPriceLineSchema, endPriceLine)
export const takePaymentAction = defineAction('takePayment', takePaymentSchema, takePayment)
export const voidPaymentAction = defineAction('voidPayment', voidPaymentSchema, voidPayment)
export const writeInvoiceAction = defineAction('writeInvoice', writeInvoiceSchema, writeInvoice)
export const logCallAction = defineAction('logCall', logCallSchema, logCall)
