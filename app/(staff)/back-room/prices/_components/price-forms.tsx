'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { firstTax, type TaxOption } from '@/app/_components/money/tax-field'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { formatAmount } from '@/lib/core/money/amount'
import type { RouteRules } from '@/lib/core/route/rules'
import { addPriceItemSchema, changePriceItemSchema } from '@/lib/schemas/price'
import type { PriceItemSeen } from '@/lib/use-cases/prices/see-price-list'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { addPriceItemAction, changePriceItemAction } from '../actions'
import { labelOf, PriceFields } from './price-fields'

type AddProps = { currency: string; rules: RouteRules; taxes: readonly TaxOption[] }

export function AddPriceForm({ currency, rules, taxes }: AddProps) {
  const form = useActionForm(addPriceItemSchema, addPriceItemAction, {
    defaultValues: { stepId: '', text: '', unitPrice: '', tax: firstTax(taxes) },
  })
  return (
    <ActionForm form={form} submitLabel="Add this price">
      <PriceFields text={form.text} currency={currency} rules={rules} taxes={taxes} />
    </ActionForm>
  )
}

type Props = {
  item: PriceItemSeen
  rules: RouteRules
  taxes: readonly TaxOption[]
  currency: string
  exponent: number
  by: string
}

export function PriceForm({ item, rules, taxes, currency, exponent, by }: Props) {
  const { id: itemId, version, stepId, text } = item
  const amounts = { unitPrice: formatAmount(item.unitMinor, exponent), tax: item.tax }
  const fresh = { itemId, version, stepId, text, ...amounts }
  const form = useActionForm(changePriceItemSchema, changePriceItemAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <PriceFields text={form.text} currency={currency} rules={rules} taxes={taxes} also={[item.tax]} />
      <ConflictResolver form={form} fresh={fresh} what={item.text} labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
