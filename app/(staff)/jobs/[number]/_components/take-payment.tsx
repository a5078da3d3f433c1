'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { paymentKinds, takePaymentSchema } from '@/lib/schemas/job'
import { takePaymentAction } from '../actions'

export function TakePayment({ jobId, currency }: { jobId: string; currency: string }) {
  const form = useActionForm(takePaymentSchema, takePaymentAction, {
    defaultValues: { jobId, kind: 'payment', amount: '', how: '' },
    onDone: () => form.form.reset(),
  })
  return (
    <details>
      <summary>Take a payment</summary>
      <ActionForm form={form} submitLabel="Take the payment">
        <Choice
          label="Kind"
          options={paymentKinds.map((kind) => ({ value: kind, label: kind }))}
          {...form.text('kind')}
        />
        <div className={styles.line}>
          <TextInput label={`Amount, ${currency}`} inputMode="decimal" {...form.text('amount')} />
          <TextInput label="How" placeholder="cash, card…" {...form.text('how')} />
        </div>
      </ActionForm>
    </details>
  )
}
