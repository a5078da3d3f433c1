import { RefusedError } from '../errors'
import { parseAmount, type AmountManner } from './amount'

/** The amount in the currency's minor units; refused at its form field when it cannot be read. */
export function minorAt(text: string, manner: AmountManner, field: string): number {
  const minor = parseAmount(text, manner)
  if (minor.ok) return minor.value
  throw new RefusedError({ ...minor.refusal, code: 'invalid', fields: { [field]: minor.refusal.message } })
}

/** A tax as it was on the day: its name, '' when it has none, and its rate in millionths. */
export type LineTax = { readonly taxName: string; readonly taxMillionths: number }

export type PriceLine = LineTax & {
  readonly text: string
  readonly quantityThousandths: number
  /** Below zero: a discount. */
  readonly unitMinor: number
  /** Why a discount is given; '' for what is charged. */
  readonly reason: string
}

type Typed = { readonly text: string; readonly quantity: number; readonly unitPrice: string }

/** A price line as typed → as it is kept. `field`: the form field of its unit price. */
export const priceOf = (line: Typed, tax: LineTax, manner: AmountManner, field: string): PriceLine => ({
  text: line.text,
  quantityThousandths: line.quantity,
  unitMinor: minorAt(line.unitPrice, manner, field),
  reason: '',
  ...tax,
})

/** A discount as typed → as it is kept: one piece, below zero, with its reason. */
export const discountOf = (
  discount: { readonly amount: string; readonly reason: string },
  tax: LineTax,
  manner: AmountManner,
): PriceLine => ({
  text: 'Discount',
  quantityThousandths: 1000,
  unitMinor: -minorAt(discount.amount, manner, 'amount'),
  reason: discount.reason,
  ...tax,
})

/** "Discount: returning customer"; what is charged by its own words. */
export const lineWords = ({ text, reason }: Pick<PriceLine, 'text' | 'reason'>): string =>
  reason === '' ? text : `${text}: ${reason}`
