'use client'
import { useWatch } from 'react-hook-form'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { PaymentFields } from '@/app/_components/money/payment-fields'
import { Select } from '@/app/_components/ui/select'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { paymentKinds, takePaymentSchema } from '@/lib/schemas/job'
import { paymentKindWords } from '@/lib/words/money'
import { takePaymentAction } from '../actions'

export type PaymentProps = {
  jobId: string
  currency: string
  /** What is owed, as it is typed; '' when nothing is. */
  owed: string
}

/** What was written for the payment. */
export type Receipt = { readonly receipt: string; readonly receiptId: string }

const kinds = paymentKinds.map((value) => ({ value, label: paymentKindWords[value] }))

export function TakePaymentForm({ jobId, currency, owed, onTaken }: PaymentProps & { onTaken: (to: Receipt) => void }) {
  const empty = { jobId, kind: 'payment', amount: owed, method: 'cash', how: '', confirmed: false } as const
  const form = useActionForm(takePaymentSchema, takePaymentAction, {
    defaultValues: empty,
    onDone: (receipt) => {
      form.form.reset({ ...empty, amount: '' })
      onTaken(receipt)
    },
  })
  const confirmed = useWatch({ control: form.form.control, name: 'confirmed' })
  const asksTwice = confirmed || form.form.formState.errors.confirmed !== undefined
  return (
    <ActionForm form={form} submitLabel="Take payment">
      <div className={styles.line}>
        <Select label="Kind" options={kinds} {...form.text('kind')} />
        <PaymentFields
          currency={currency}
          asksTwice={asksTwice}
          amount={form.text('amount')}
          method={form.text('method')}
          how={form.text('how')}
          confirmed={form.text('confirmed')}
        />
      </div>
    </ActionForm>
  )
}
