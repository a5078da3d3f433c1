'use server'
import { addTaxRateSchema, changeTaxRateSchema, retireTaxRateSchema } from '@/lib/schemas/tax'
import { retireTaxRate } from '@/lib/use-cases/back-room/retire'
import { addTaxRate } from '@/lib/use-cases/taxes/add-tax-rate'
import { changeTaxRate } from '@/lib/use-cases/taxes/change-tax-rate'
import { defineAction } from '@/lib/web/define-action'

const list = () => '/back-room/taxes'

export const addTaxRateAction = defineAction('addTaxRate', addTaxRateSchema, addTaxRate, list)
export const changeTaxRateAction = defineAction('changeTaxRate', changeTaxRateSchema, changeTaxRate, list)
export const retireTaxRateAction = defineAction('retireTaxRate', retireTaxRateSchema, retireTaxRate)
