'use client'
import { useFieldArray, useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { firstTax, TaxField } from '@/app/_components/money/tax-field'
import { usePicks, type Picks } from '@/app/_components/pick/use-picks'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { paymentMethods } from '@/lib/core/money/payment'
import type { PricePick } from '@/lib/core/money/price-pick'
import type { BookingView } from '@/lib/use-cases/jobs/see-booking'
import { paymentMethodWords } from '@/lib/words/money'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { FromList } from './from-list'
import { linesToAdd } from './priced-work'

const methods = paymentMethods.map((value) => ({ value, label: paymentMethodWords[value] }))

type Props = { form: BookingActionForm; booking: BookingView }

/** The price lines, from the list or typed, and the deposit. */
export function PricesPart({ form, booking }: Props) {
  const { taxes } = booking
  const list = usePicks('prices', booking.priceList, [])
  const lines = useFieldArray({ control: form.form.control, name: 'prices' })
  const [ordered, prices, heads] = useWatch({ control: form.form.control, name: ['ordered', 'prices', 'heads'] })
  const work = linesToAdd({ ordered, prices, heads }, list.known, booking.rules)
  const add = () => {
    const tax = form.form.getValues('prices').at(-1)?.tax ?? firstTax(taxes)
    lines.append({ text: '', quantity: '1', unitPrice: '', tax, perHead: false })
  }
  // The list says what one head costs. What stands in the lines already is left alone.
  const addFromList = ({ text, unitPrice, tax }: PricePick) =>
    lines.append({ text, quantity: String(heads.length || 1), unitPrice, tax, perHead: true })
  return (
    <section className="part" aria-label="Prices and deposit">
      <h2>Prices and deposit</h2>
      {lines.fields.map((line, at) => (
        <LineFields key={line.id} form={form} booking={booking} list={list} at={at} onRemove={() => lines.remove(at)} />
      ))}
      <div className="row">
        {work.length > 0 && (
          <Button onClick={() => lines.append(work, { shouldFocus: false })}>Add prices of the ordered work</Button>
        )}
        <Button onClick={add}>Add a price line</Button>
      </div>
      <FromList list={list} action="Add it as a line" onPick={addFromList} />
      <DepositFields form={form} currency={booking.currency} />
    </section>
  )
}

type LineProps = Props & { list: Picks<'prices'>; at: number; onRemove: () => void }

function LineFields({ form, booking, list, at, onRemove }: LineProps) {
  const perHead = useWatch({ control: form.form.control, name: `prices.${at}.perHead` })
  const { onChange, ...each } = form.text(`prices.${at}.perHead`)
  const follow = (event: { target: { checked: boolean } }) => {
    if (event.target.checked) {
      form.form.setValue(`prices.${at}.quantity`, String(form.form.getValues('heads').length), { shouldDirty: true })
    }
    return onChange(event)
  }
  return (
    <fieldset className={styles.priceLine}>
      <legend className="visually-hidden">Price line {at + 1}</legend>
      <TextInput label="For" {...form.text(`prices.${at}.text`)} />
      <TextInput label="Quantity" inputMode="decimal" readOnly={perHead} {...form.text(`prices.${at}.quantity`)} />
      <TextInput label={`Each, ${booking.currency}`} inputMode="decimal" {...form.text(`prices.${at}.unitPrice`)} />
      <TaxField taxes={booking.taxes} also={list.known.map(({ tax }) => tax)} control={form.text(`prices.${at}.tax`)} />
      <Check label="Each head" {...each} onChange={follow} />
      <Button variant="quiet" onClick={onRemove}>
        Remove<span className="visually-hidden"> price line {at + 1}</span>
      </Button>
    </fieldset>
  )
}

function DepositFields({ form, currency }: { form: BookingActionForm; currency: string }) {
  const isMeant = useWatch({ control: form.form.control, name: 'depositConfirmed' })
  const asksTwice = isMeant || form.form.formState.errors.depositConfirmed !== undefined
  return (
    <>
      <div className={styles.fields}>
        <TextInput label={`Deposit, ${currency}`} inputMode="decimal" {...form.text('deposit')} />
        <Select label="Deposit paid by" options={methods} {...form.text('depositMethod')} />
        <TextInput label="Note to the deposit" {...form.text('depositHow')} />
      </div>
      {asksTwice && <Check label="Take more than is owed" {...form.text('depositConfirmed')} />}
      <Check label="Show prices on the customer’s private link" {...form.text('pricesOnLink')} />
    </>
  )
}
