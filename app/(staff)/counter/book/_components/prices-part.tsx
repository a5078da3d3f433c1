'use client'
import { useFieldArray, useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { firstTax, TaxField, type TaxOption } from '@/app/_components/money/tax-field'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { paymentMethods } from '@/lib/core/money/payment'
import type { PricePick } from '@/lib/core/money/price-pick'
import { paymentMethodWords } from '@/lib/words/money'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { FromList } from './from-list'

const methods = paymentMethods.map((value) => ({ value, label: paymentMethodWords[value] }))

type Props = {
  form: BookingActionForm
  currency: string
  list: readonly PricePick[]
  taxes: readonly TaxOption[]
}

export function PricesPart({ form, currency, list, taxes }: Props) {
  const isMeant = useWatch({ control: form.form.control, name: 'depositConfirmed' })
  const asksTwice = isMeant || form.form.formState.errors.depositConfirmed !== undefined
  const lines = useFieldArray({ control: form.form.control, name: 'prices' })
  const add = () => {
    const tax = form.form.getValues('prices').at(-1)?.tax ?? firstTax(taxes)
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
            <TextInput label="Quantity" inputMode="decimal" {...form.text(`prices.${at}.quantity`)} />
            <TextInput label={`Each, ${currency}`} inputMode="decimal" {...form.text(`prices.${at}.unitPrice`)} />
            <TaxField taxes={taxes} also={list.map(({ tax }) => tax)} control={form.text(`prices.${at}.tax`)} />
          </div>
          <Button variant="quiet" onClick={() => lines.remove(at)}>
            Remove price line {at + 1}
          </Button>
        </fieldset>
      ))}
      <FromList list={list} action="Add it as a line" onPick={addFromList} />
      <div className="row">
        <Button onClick={add}>Add a price line</Button>
      </div>
      <div className={styles.fields}>
        <TextInput label={`Deposit, ${currency}`} inputMode="decimal" {...form.text('deposit')} />
        <Select label="Deposit paid by" options={methods} {...form.text('depositMethod')} />
        {asksTwice && <Check label="Take more than is owed" {...form.text('depositConfirmed')} />}
        <TextInput label="Note to the deposit" required={false} {...form.text('depositHow')} />
      </div>
      <Check label="Show prices on the customer’s private link" {...form.text('pricesOnLink')} />
    </>
  )
}
