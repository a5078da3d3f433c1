import { formatAmount } from '@/lib/core/money/amount'
import { formatMoney } from '@/lib/core/money/format-money'
import type { Reader } from '@/lib/data/db'
import { activePriceItems } from '@/lib/data/price-list'
import { taxText, type PricePick } from '@/lib/schemas/price'

type Manner = { readonly currency: string; readonly currencyExponent: number; readonly locale: string }

/** The list as a price line takes from it. */
export async function pricePicks(reader: Reader, { currency, currencyExponent, locale }: Manner): Promise<PricePick[]> {
  return (await activePriceItems(reader)).map(({ id, text, unitMinor, taxBasisPoints }) => ({
    id,
    label: `${text}, ${formatMoney(unitMinor, currency, locale)}`,
    text,
    unitPrice: formatAmount(unitMinor, currencyExponent),
    tax: taxText(taxBasisPoints),
  }))
}
