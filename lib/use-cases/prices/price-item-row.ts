import type { AddPriceItem } from '@/lib/schemas/price'
import { minorAt } from '@/lib/core/money/price-of'

/** What the form says, as it is kept. `exponent`: decimals of the shop's currency. */
export const rowOf = ({ stepId, text, unitPrice, tax }: AddPriceItem, exponent: number) => ({
  stepId,
  text,
  unitMinor: minorAt(unitPrice, exponent, 'unitPrice'),
  taxBasisPoints: tax,
})
