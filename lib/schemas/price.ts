import { z } from 'zod'
import { percentOf } from '@/lib/core/money/percent'
import { requiredText } from './figure'
import { amount, taxPercent } from './money'
import { stepIdSchema } from './step'

const priceItem = z.object({
  /** '': no step asks for it; it is put on a job by hand. */
  stepId: z.union([z.literal(''), stepIdSchema], 'Choose a step, or none.'),
  text: requiredText('Say what it is for, as it is to print.', 120),
  /** For one head; how many decimals it may have is the shop's currency's to say. */
  unitPrice: amount,
  tax: taxPercent,
})
const expected = { itemId: z.string(), version: z.number().int() }

export const addPriceItemSchema = priceItem
export const changePriceItemSchema = priceItem.extend(expected)
export const retirePriceItemSchema = z.object({ ...expected, retired: z.boolean() })

export type PriceItemForm = z.input<typeof priceItem>
export type AddPriceItem = z.output<typeof addPriceItemSchema>
export type ChangePriceItem = z.output<typeof changePriceItemSchema>
export type RetirePriceItem = z.output<typeof retirePriceItemSchema>

/** Hundredths of a per cent as they are typed: 825 → "8.25", 0 → "". The inverse of `taxPercent`. */
export const taxText = (basisPoints: number): string =>
  basisPoints === 0 ? '' : percentOf(basisPoints).replace(' %', '')

/** An item of the list as a price line takes it over: as it would have been typed. */
export type PricePick = {
  readonly id: string
  /** What it is chosen by. */
  readonly label: string
  readonly text: string
  readonly unitPrice: string
  readonly tax: string
}
export type PickedFields = Pick<PricePick, 'text' | 'unitPrice' | 'tax'>
export const nothingPicked: PickedFields = { text: '', unitPrice: '', tax: '' }

/** The line with the item's words, amount and tax, but where something was typed that no earlier pick put there. */
export function picked(line: PickedFields, item: PickedFields, earlier: PickedFields): PickedFields {
  const field = (name: keyof PickedFields) =>
    line[name] === '' || line[name] === earlier[name] ? item[name] : line[name]
  return { text: field('text'), unitPrice: field('unitPrice'), tax: field('tax') }
}
