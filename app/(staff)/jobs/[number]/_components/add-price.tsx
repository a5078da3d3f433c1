'use client'
import Link from 'next/link'
import { useRef } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { FromList } from '@/app/(staff)/counter/book/_components/from-list'
import { addPriceLineSchema } from '@/lib/schemas/job'
import { nothingPicked, picked, type PickedFields, type PricePick } from '@/lib/core/money/price-pick'
import { addPriceLineAction } from '../actions'

type Props = { jobId: string; currency: string; list: readonly PricePick[] }

export function AddPrice({ jobId, currency, list }: Props) {
  // What the list put into the fields: another pick may take its place, what was typed stays.
  const earlier = useRef<PickedFields>(nothingPicked)
  const form = useActionForm(addPriceLineSchema, addPriceLineAction, {
    defaultValues: { jobId, text: '', quantity: '1', unitPrice: '', tax: '' },
    onDone: () => {
      form.form.reset()
      earlier.current = nothingPicked
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
    <details>
      <summary>Add a price line</summary>
      <div className="stack">
        <Link href="/back-room/prices">The whole price list</Link>
        <FromList list={list} action="Fill in" onPick={fill} />
        <ActionForm form={form} submitLabel="Add the line">
          <div className={styles.line}>
            <TextInput label="For" {...form.text('text')} />
            <TextInput label="Quantity" inputMode="numeric" {...form.text('quantity')} />
            <TextInput label={`Each, ${currency}`} inputMode="decimal" {...form.text('unitPrice')} />
            <TextInput label="Tax, %" inputMode="decimal" {...form.text('tax')} />
          </div>
        </ActionForm>
      </div>
    </details>
  )
}
