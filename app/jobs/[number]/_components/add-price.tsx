'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/counter/book/_components/booking.module.css'
import { addPriceLineSchema } from '@/lib/schemas/job'
import { addPriceLineAction } from '../actions'

export function AddPrice({ jobId, currency }: { jobId: string; currency: string }) {
  const form = useActionForm(addPriceLineSchema, addPriceLineAction, {
    defaultValues: { jobId, text: '', quantity: '1', unitPrice: '', tax: '' },
    onDone: () => form.form.reset(),
  })
  return (
    <details>
      <summary>Add a price line</summary>
      <ActionForm form={form} submitLabel="Add the line">
        <div className={styles.line}>
          <TextInput label="For" {...form.text('text')} />
          <TextInput label="Quantity" inputMode="numeric" {...form.text('quantity')} />
          <TextInput label={`Each, ${currency}`} inputMode="decimal" {...form.text('unitPrice')} />
          <TextInput label="Tax, %" inputMode="decimal" {...form.text('tax')} />
        </div>
      </ActionForm>
    </details>
  )
}
