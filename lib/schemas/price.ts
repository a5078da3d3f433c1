import { z } from 'zod'
import { requiredText } from './figure'
import { amount, taxChoice } from './money'
import { stepIdSchema } from './step'
import { text } from './text'

const priceItem = z.object({
  /** '': no step asks for it; it is put on a job by hand. */
  stepId: z.union([z.literal(''), stepIdSchema], 'Choose a step, or none.'),
  text: requiredText('Enter the text as it prints.', 120),
  /** For one head; how many decimals it may have is the shop's currency's to say. */
  unitPrice: amount,
  tax: taxChoice,
})
const expected = { itemId: text(), version: z.number().int() }

export const addPriceItemSchema = priceItem
export const changePriceItemSchema = priceItem.extend(expected)
export const retirePriceItemSchema = z.object({ ...expected, retired: z.boolean() })

export type PriceItemForm = z.input<typeof priceItem>
export type AddPriceItem = z.output<typeof addPriceItemSchema>
export type ChangePriceItem = z.output<typeof changePriceItemSchema>
export type RetirePriceItem = z.output<typeof retirePriceItemSchema>
