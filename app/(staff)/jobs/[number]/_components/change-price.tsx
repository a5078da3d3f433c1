'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TaxField, type TaxOption } from '@/app/_components/money/tax-field'
import { TextInput } from '@/app/_components/ui/text-input'
import { changePriceLineSchema, endPriceLineSchema, type ChangePriceLineForm } from '@/lib/schemas/job'
import { changePriceLineAction, endPriceLineAction } from '../actions'

/** A line as the form has it; a discount's amount is typed without a sign. */
export type LineToChange = Omit<ChangePriceLineForm, 'why'> & {
  readonly name: string
  readonly isDiscount: boolean
}

export type PriceProps = { line: LineToChange; currency: string; taxes: readonly TaxOption[] }

/** Changes a line that is on no invoice yet; it asks for a reason. */
export function ChangePriceForm({ line, currency, taxes, onDone }: PriceProps & { onDone: () => void }) {
  const { name: _name, isDiscount, ...values } = line
  const form = useActionForm(changePriceLineSchema, changePriceLineAction, {
    defaultValues: { ...values, why: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <TextInput label={isDiscount ? 'Discount for' : 'For'} {...form.text('text')} />
      {!isDiscount && <TextInput label="Quantity" inputMode="decimal" {...form.text('quantity')} />}
      <TextInput
        label={`${isDiscount ? 'Discount' : 'Each'}, ${currency}`}
        inputMode="decimal"
        {...form.text('unitPrice')}
      />
      <TaxField taxes={taxes} also={[line.tax]} control={form.text('tax')} />
      <TextInput label="Reason for the change" required {...form.text('why')} />
    </ActionForm>
  )
}

export function RemovePriceForm({ line, onDone }: { line: LineToChange; onDone: () => void }) {
  const form = useActionForm(endPriceLineSchema, endPriceLineAction, {
    defaultValues: { jobId: line.jobId, lineId: line.lineId, why: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Remove">
      <TextInput label="Reason" required {...form.text('why')} />
    </ActionForm>
  )
}
