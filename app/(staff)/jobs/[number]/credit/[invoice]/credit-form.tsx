'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { writeCreditNoteSchema } from '@/lib/schemas/money-papers'
import type { InvoiceView } from '@/lib/use-cases/money/see-invoice'
import { moneyPaperHref } from '../../_components/papers'
import { writeCreditNoteAction } from './actions'

/** How much of each line is taken back. */
export function CreditForm({ invoice }: { invoice: InvoiceView }) {
  const none = invoice.lines.map(() => '')
  const form = useActionForm(writeCreditNoteSchema, writeCreditNoteAction, {
    defaultValues: { invoiceId: invoice.id, reason: '', amounts: none },
    onDone: () => form.form.reset(),
  })
  const takeAll = () =>
    invoice.lines.forEach(({ leftMinor, left }, at) =>
      form.form.setValue(`amounts.${at}`, leftMinor === 0 ? '' : left, { shouldDirty: true }),
    )
  const isSpent = invoice.creditedMinor >= invoice.totalMinor
  return (
    <>
      {form.value && (
        <Notice title={`Credit note ${form.value.number}`}>
          <a href={moneyPaperHref(form.value.paperId)} target="_blank" rel="noreferrer">
            Print credit note {form.value.number}
          </a>
        </Notice>
      )}
      {isSpent ? (
        <p>Nothing is left of this invoice to credit.</p>
      ) : (
        <ActionForm
          form={form}
          submitLabel="Write the credit note"
          actions={<Button onClick={takeAll}>Credit all of it</Button>}
        >
          <div className={styles.fields}>
            {invoice.lines.map(({ text, leftMinor, left, tax }, at) =>
              leftMinor === 0 ? null : (
                <TextInput
                  key={at}
                  label={`${text}: credit, ${invoice.currency}`}
                  hint={`Up to ${left} without tax; tax: ${tax}`}
                  inputMode="decimal"
                  autoComplete="off"
                  {...form.text(`amounts.${at}`)}
                />
              ),
            )}
          </div>
          <TextInput label="Reason" hint="Printed on the credit note" required {...form.text('reason')} />
        </ActionForm>
      )}
    </>
  )
}
