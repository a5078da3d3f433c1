import type { AddPriceItem } from '@/lib/schemas/price'
import type { AmountManner } from '@/lib/core/money/amount'
import { minorAt, type LineTax } from '@/lib/core/money/price-of'

/** What the form says, as it is kept. `taxed`: the chosen tax as it is today. */
export const rowOf = ({ stepId, text, unitPrice, tax }: AddPriceItem, taxed: LineTax, manner: AmountManner) => ({
  stepId,
  text,
  unitMinor: minorAt(unitPrice, manner, 'unitPrice'),
  taxMillionths: taxed.taxMillionths,
  taxRateId: tax.rateId === '' ? null : tax.rateId,
})
