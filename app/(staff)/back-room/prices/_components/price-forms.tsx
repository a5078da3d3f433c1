'use client'
import { firstTax, type TaxOption } from '@/app/_components/money/tax-field'
import { formatAmount } from '@/lib/core/money/amount'
import type { RouteRules } from '@/lib/core/route/rules'
import { addPriceItemSchema, changePriceItemSchema } from '@/lib/schemas/price'
import type { PriceItemSeen } from '@/lib/use-cases/prices/see-price-list'
import { EntryForm } from '../../_components/entry-form'
import { addPriceItemAction, changePriceItemAction } from '../actions'
import { labelOf, PriceFields } from './price-fields'

type AddProps = { currency: string; rules: RouteRules; taxes: readonly TaxOption[] }

export const AddPriceForm = (manner: AddProps) => (
  <EntryForm
    schema={addPriceItemSchema}
    action={addPriceItemAction}
    values={{ stepId: '', text: '', unitPrice: '', tax: firstTax(manner.taxes) }}
    submitLabel="Add this price"
    fields={({ text }) => <PriceFields text={text} {...manner} />}
  />
)

type Props = AddProps & { item: PriceItemSeen; exponent: number; by: string }

export function PriceForm({ item, exponent, by, ...manner }: Props) {
  const { id: itemId, version, stepId, text, tax } = item
  return (
    <EntryForm
      schema={changePriceItemSchema}
      action={changePriceItemAction}
      values={{ itemId, version, stepId, text, unitPrice: formatAmount(item.unitMinor, exponent), tax }}
      submitLabel="Save"
      fields={(form) => <PriceFields text={form.text} also={[tax]} {...manner} />}
      kept={{ what: text, labelOf, by }}
    />
  )
}
