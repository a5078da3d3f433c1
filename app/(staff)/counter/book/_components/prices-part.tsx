'use client'
import { useFieldArray } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import type { PricePick } from '@/lib/core/money/price-pick'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { FromList } from './from-list'

type Props = { form: BookingActionForm; currency: string; list: readonly PricePick[] }

export function PricesPart({ form, currency, list }: Props) {
  const lines = useFieldArray({ control: form.form.control, name: 'prices' })
  const add = () => {
    const tax = form.form.getValues('prices').at(-1)?.tax ?? ''
    lines.append({ text: '', quantity: '1', unitPrice: '', tax })
  }
  // The list says what one head costs. What stands in the lines already is left alone.
  const addFromList = ({ text, unitPrice, tax }: PricePick) =>
    lines.append({ text, quantity: String(form.form.getValues('heads').length || 1), unitPrice, tax })
  return (
    <>
      {lines.fields.map((line, at) => (
        <fieldset key={line.id} className={styles.head}>
          <legend>Price line {at + 1}</legend>
          <div className={styles.line}>
            <TextInput label="For" {...form.text(`prices.${at}.text`)} />
            <TextInput label="Quantity" inputMode="numeric" {...form.text(`prices.${at}.quantity`)} />
            <TextInput label={`Each, ${currency}`} inputMode="decimal" {...form.text(`prices.${at}.unitPrice`)} />
            <TextInput label="Tax, %" inputMode="decimal" {...form.text(`prices.${at}.tax`)} />
          </div>
          <Button variant="quiet" onClick={() => lines.remove(at)}>
            Take price line {at + 1} off
          </Button>
        </fieldset>
      ))}
      <FromList list={list} action="Add it as a line" onPick={addFromList} />
      <div className="row">
        <Button onClick={add}>Add a price line</Button>
      </div>
      <div className={styles.fields}>
        <TextInput label={`Deposit, ${currency}`} inputMode="decimal" {...form.text('deposit')} />
        <TextInput label="How it was paid" placeholder="cash, card…" {...form.text('depositHow')} />
      </div>
      <Check label="Show prices on the customer’s private link" {...form.text('pricesOnLink')} />
    </>
  )
}
