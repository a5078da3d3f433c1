import { z } from 'zod'
import { requiredText } from './figure'
import { taxPercent } from './money'
import { text } from './text'

const taxRate = z.object({
  name: requiredText('Enter the name of the tax as it prints.', 60),
  rate: taxPercent,
  /** New price lines start with it. */
  isDefault: z.boolean(),
})
const expected = { rateId: text(), version: z.number().int() }

export const addTaxRateSchema = taxRate
export const changeTaxRateSchema = taxRate.extend(expected)
export const retireTaxRateSchema = z.object({ ...expected, retired: z.boolean() })

export type TaxRateForm = z.input<typeof taxRate>
export type AddTaxRate = z.output<typeof addTaxRateSchema>
export type ChangeTaxRate = z.output<typeof changeTaxRateSchema>
