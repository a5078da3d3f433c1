'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import { taxText } from '@/lib/core/money/percent'
import { addTaxRateSchema, changeTaxRateSchema, type TaxRateForm } from '@/lib/schemas/tax'
import type { TaxRateSeen } from '@/lib/use-cases/taxes/see-tax-rates'
import { ConflictResolver } from '../../_components/conflict-resolver'
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

export function AddTaxForm() {
  const form = useActionForm(addTaxRateSchema, addTaxRateAction, {
    defaultValues: { name: '', rate: '', isDefault: false },
  })
  return (
    <ActionForm form={form} submitLabel="Add this tax">
      <Fields text={form.text} />
    </ActionForm>
  )
}

export function TaxForm({ rate, by }: { rate: TaxRateSeen; by: string }) {
  const { id: rateId, version, name, isDefault } = rate
  const fresh = { rateId, version, name, rate: taxText(rate.rateMillionths), isDefault }
  const form = useActionForm(changeTaxRateSchema, changeTaxRateAction, { defaultValues: fresh })
  return (
    <ActionForm form={form} submitLabel="Save">
      <Fields text={form.text} />
      <ConflictResolver form={form} fresh={fresh} what={name} labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
