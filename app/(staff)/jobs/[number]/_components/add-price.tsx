'use client'
import { Link } from '@/app/_components/ui/link'
import { useRef } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { firstTax, TaxField, type TaxOption } from '@/app/_components/money/tax-field'
import { usePicks, type FirstPicks } from '@/app/_components/pick/use-picks'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { FromList } from '@/app/(staff)/counter/book/_components/from-list'
import { addDiscountSchema, addPriceLineSchema } from '@/lib/schemas/job'
import { picked, type PickedFields, type PricePick } from '@/lib/core/money/price-pick'
import { addDiscountAction, addPriceLineAction } from '../actions'

export type AddProps = { jobId: string; currency: string; list: FirstPicks<'prices'>; taxes: readonly TaxOption[] }

export function AddPrice({ jobId, currency, list: first, taxes }: AddProps) {
  const list = usePicks('prices', first, [])
  const untouched: PickedFields = { text: '', unitPrice: '', tax: firstTax(taxes) }
  // What the list put into the fields: another pick may take its place, what was typed stays.
  const earlier = useRef<PickedFields>(untouched)
  const form = useActionForm(addPriceLineSchema, addPriceLineAction, {
    defaultValues: { jobId, quantity: '1', ...untouched },
    onDone: () => {
      form.form.reset()
      earlier.current = untouched
    },
  })
  const fill = (item: PricePick) => {
    const line = picked(form.form.getValues(), item, earlier.current)
    earlier.current = item
    for (const field of ['text', 'unitPrice', 'tax'] as const) {
      form.form.setValue(field, line[field], { shouldDirty: true, shouldValidate: true })
    }
  }
  return (
    <div className="stack">
      <Link href="/back-room/prices">The whole price list</Link>
      <FromList list={list} action="Fill in" onPick={fill} />
      <ActionForm form={form} submitLabel="Add the line">
        <div className={styles.line}>
          <TextInput label="For" {...form.text('text')} />
          <TextInput label="Quantity" hint="2, or 1.5 h" inputMode="decimal" {...form.text('quantity')} />
          <TextInput label={`Each, ${currency}`} inputMode="decimal" {...form.text('unitPrice')} />
          <TaxField taxes={taxes} also={list.known.map(({ tax }) => tax)} control={form.text('tax')} />
        </div>
      </ActionForm>
    </div>
  )
}

/** An amount off, with the reason that the customer reads. */
export function AddDiscount({ jobId, currency, taxes }: Omit<AddProps, 'list'>) {
  const form = useActionForm(addDiscountSchema, addDiscountAction, {
    defaultValues: { jobId, amount: '', tax: firstTax(taxes), reason: '' },
    onDone: () => form.form.reset(),
  })
  return (
    <ActionForm form={form} submitLabel="Take it off">
      <div className={styles.line}>
        <TextInput label={`Discount, ${currency}`} inputMode="decimal" {...form.text('amount')} />
        <TextInput label="Reason" hint="Printed on the invoice" {...form.text('reason')} />
        <TaxField taxes={taxes} hint="That of the lines it is taken off" control={form.text('tax')} />
      </div>
    </ActionForm>
  )
}
