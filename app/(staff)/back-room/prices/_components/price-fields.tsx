import { TaxField, type TaxOption } from '@/app/_components/money/tax-field'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { RouteRules } from '@/lib/core/route/rules'
import { stepLabel, tableOf } from '@/lib/core/route/table'
import type { PriceItemForm } from '@/lib/schemas/price'

type PriceField = keyof PriceItemForm

const labels: Record<PriceField, string> = {
  stepId: 'Step',
  text: 'Text',
  unitPrice: 'Price per head',
  tax: 'Tax',
}
export const labelOf = (path: string): string => labels[path as PriceField] ?? path

export const noStep = 'none: added to jobs by hand'
/** Every step once; flow runs cost the same wherever they stand. */
const stepOptions = (rules: RouteRules) => {
  const ids = [...new Set(tableOf(rules).rows.map((row) => row.stepId))]
  return ids.map((id) => ({ value: id, label: stepLabel(id, rules) }))
}

type Props<Control extends object> = {
  /** What the form gives each control. */
  text: (name: PriceField) => Control
  currency: string
  rules: RouteRules
  taxes: readonly TaxOption[]
  /** A percentage that it holds now. */
  also?: readonly string[]
}

export function PriceFields<Control extends object>({ text, currency, rules, taxes, also }: Props<Control>) {
  return (
    <>
      <Select
        label={labels.stepId}
        hint="The cut bench adds up the prices of the steps of a cut."
        options={stepOptions(rules)}
        empty={noStep}
        {...text('stepId')}
      />
      <TextInput label={labels.text} hint="Printed on estimates and receipts" required {...text('text')} />
      <TextInput label={`${labels.unitPrice}, ${currency}`} inputMode="decimal" required {...text('unitPrice')} />
      <TaxField taxes={taxes} also={also} control={text('tax')} />
    </>
  )
}
