'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { rejectOutsideSchema } from '@/lib/schemas/outside'
import { rejectOutsideAction } from '../actions'
import { payerOptions } from './payer'

type Props = {
  orderId: string
  visitId: string
  submitLabel: string
  /** What is wrong, as far as it is known already. */
  why?: string
  onDone?: () => void
}

/** Rejects what a vendor sent back. */
export function RejectForm({ orderId, visitId, submitLabel, why = '', onDone }: Props) {
  const form = useActionForm(rejectOutsideSchema, rejectOutsideAction, {
    defaultValues: { orderId, visitId, why },
    ...(onDone && { onDone }),
  })
  return (
    <ActionForm form={form} submitLabel={submitLabel}>
      <p>All work of this order is then needed again. Send the head out again or do the work here.</p>
      <TextInput label="What is wrong" required {...form.text('why')} />
      <Select
        label="Cost of rework paid by"
        required
        empty="Choose who pays"
        options={payerOptions}
        {...form.text('redoCost')}
      />
    </ActionForm>
  )
}
