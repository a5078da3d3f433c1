import 'server-only'
import { firstPicks, type PickAsked } from '@/lib/core/find/pick'
import { formatAmount } from '@/lib/core/money/amount'
import { formatMoney } from '@/lib/core/money/format-money'
import { taxText } from '@/lib/core/money/percent'
import { rateField } from '@/lib/core/money/tax-choice'
import type { PricePick } from '@/lib/core/money/price-pick'
import type { Reader } from './db'
import { mapPage, type Paged } from './paging'
import { priceItemsToPick } from './price-list'

type Manner = { readonly currency: string; readonly currencyExponent: number; readonly locale: string }

/** The list as a price line takes from it: the first of those asked for. */
export async function pricePicks(
  reader: Reader,
  { currency, currencyExponent, locale }: Manner,
  asked: PickAsked = firstPicks,
): Promise<Paged<PricePick>> {
  return mapPage(
    await priceItemsToPick(reader, asked),
    ({ id, stepId, text, unitMinor, taxMillionths, taxRateId }) => ({
      id,
      stepId,
      label: `${text}, ${formatMoney(unitMinor, currency, locale)}`,
      text,
      unitPrice: formatAmount(unitMinor, currencyExponent),
      tax: taxRateId === null ? taxText(taxMillionths) : rateField(taxRateId),
    }),
  )
}
