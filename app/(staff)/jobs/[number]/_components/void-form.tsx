'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { voidPaymentSchema } from '@/lib/schemas/money-papers'
import { voidPaymentAction } from '../actions'

/** A payment that was entered by mistake. */
export function VoidForm({ paymentId, onDone }: { paymentId: string; onDone: () => void }) {
  const form = useActionForm(voidPaymentSchema, voidPaymentAction, {
    defaultValues: { paymentId, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Void the payment">
      <p>It was entered by mistake and does not count any more. It stays on record, with its receipt.</p>
      <TextInput label="Reason" required {...form.text('reason')} />
    </ActionForm>
  )
}
