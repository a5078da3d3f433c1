'use client'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import { taxText } from '@/lib/core/money/percent'
import { addTaxRateSchema, changeTaxRateSchema, type TaxRateForm } from '@/lib/schemas/tax'
import type { TaxRateSeen } from '@/lib/use-cases/taxes/see-tax-rates'
import { EntryForm } from '../../_components/entry-form'
import { addTaxRateAction, changeTaxRateAction } from '../actions'

type TaxFieldName = keyof TaxRateForm

const labels: Readonly<Record<TaxFieldName, string>> = {
  name: 'Name',
  rate: 'Rate, %',
  isDefault: 'New price lines start with this tax',
}
const labelOf = (path: string): string => labels[path as TaxFieldName] ?? path

function Fields<Control extends object>({ text }: { text: (name: TaxFieldName) => Control }) {
  return (
    <>
      <TextInput label={labels.name} hint="Printed on invoices" required {...text('name')} />
      <TextInput
        label={labels.rate}
        hint="8.25 or 8.875; 0 or empty: taxed at nothing"
        inputMode="decimal"
        {...text('rate')}
      />
      <Check label={labels.isDefault} {...text('isDefault')} />
    </>
  )
}

export const AddTaxForm = () => (
  <EntryForm
    schema={addTaxRateSchema}
    action={addTaxRateAction}
    values={{ name: '', rate: '', isDefault: false }}
    submitLabel="Add this tax"
    fields={Fields}
  />
)

export function TaxForm({ rate, by }: { rate: TaxRateSeen; by: string }) {
  const { id: rateId, version, name, isDefault, rateMillionths } = rate
  return (
    <EntryForm
      schema={changeTaxRateSchema}
      action={changeTaxRateAction}
      values={{ rateId, version, name, rate: taxText(rateMillionths), isDefault }}
      submitLabel="Save"
      fields={Fields}
      kept={{ what: name, labelOf, by }}
    />
  )
}
