import { RefusedError } from '../errors'
import { parseAmount } from './amount'

/** The amount in the currency's minor units; refused at its form field when it has too many decimals. */
export function minorAt(text: string, exponent: number, field: string): number {
  const minor = parseAmount(text, exponent)
  if (minor.ok) return minor.value
  throw new RefusedError({ ...minor.refusal, code: 'invalid', fields: { [field]: minor.refusal.message } })
}

export type PriceLine = {
  readonly text: string
  readonly quantity: number
  readonly unitMinor: number
  readonly taxBasisPoints: number
}

/** A price line as typed → as it is kept. `field`: the form field of its unit price. */
export const priceOf = (
  line: { text: string; quantity: number; unitPrice: string; tax: number },
  exponent: number,
  field: string,
): PriceLine => ({
  text: line.text,
  quantity: line.quantity,
  unitMinor: minorAt(line.unitPrice, exponent, field),
  taxBasisPoints: line.tax,
})
