import { RefusedError } from '@/lib/core/errors'
import { parseAmount } from '@/lib/core/money/amount'
import type { NewPriceLine } from '@/lib/data/prices'

/** The amount in the currency's minor units; refused at its form field when it has too many decimals. */
export function minorAt(text: string, exponent: number, field: string): number {
  const minor = parseAmount(text, exponent)
  if (minor.ok) return minor.value
  throw new RefusedError({ ...minor.refusal, code: 'invalid', fields: { [field]: minor.refusal.message } })
}

export const priceOf = (
  line: { text: string; quantity: number; unitPrice: string; tax: number },
  exponent: number,
  field: string,
): NewPriceLine => ({
  text: line.text,
  quantity: line.quantity,
  unitMinor: minorAt(line.unitPrice, exponent, field),
  taxBasisPoints: line.tax,
})
