'use client'
import { useState, type ReactNode } from 'react'
import { useWatch } from 'react-hook-form'
import { useFound } from '@/app/_components/shell/use-found'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import type { FoundCustomer } from '@/lib/use-cases/customers/find-customers'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { Fold } from './fold'
import { heldAddress } from './held'

type Props = {
  form: BookingActionForm
  /** "Is it …?" stands below: nobody is shown twice. */
  isAsked: boolean
  /** What else stands in the first row. */
  children: ReactNode
}

/** A returning customer is found while the name or phone number is typed; anybody else is new. */
export function CustomerPart({ form, isAsked, children }: Props) {
  const customer = useWatch({ control: form.form.control, name: 'customer' })
  // What was answered about this one says nothing about the next.
  const somebodyElse = () => {
    form.form.setValue('customer', { id: '', name: '', phone: '', email: '', address: '' })
    form.form.setValue('notThese.customers', [])
  }
  return (
    <section className="part" aria-label="Customer and casting">
      {customer.id === '' ? (
        <TypedCustomer form={form} isAsked={isAsked} typed={customer}>
          {children}
        </TypedCustomer>
      ) : (
        <div className={styles.start}>
          <div className={styles.chosen}>
            <span className="figure">{customer.name}</span>
            <span>{customer.phone}</span>
            <Button onClick={somebodyElse}>Somebody else</Button>
          </div>
          {children}
        </div>
      )}
      {customer.id !== '' && form.text('customer.name').error && <p>{form.text('customer.name').error}</p>}
    </section>
  )
}

function TypedCustomer({ form, isAsked, typed, children }: Props & { typed: { name: string; phone: string } }) {
  const [asking, setAsking] = useState<'name' | 'phone'>('name')
  const answer = useFound('customers', typed[asking])
  const found = isAsked ? null : answer
  const ask = (field: 'name' | 'phone') => {
    const { onChange, ...rest } = form.text(`customer.${field}`)
    return {
      ...rest,
      onChange: (event: { target: unknown; type?: string }) => {
        setAsking(field)
        return onChange(event)
      },
    }
  }
  const pick = (customer: FoundCustomer) =>
    form.form.setValue('customer', { ...customer }, { shouldValidate: true, shouldDirty: true })
  return (
    <>
      <div className={styles.start}>
        <TextInput label="Name" required autoComplete="off" {...ask('name')} />
        <TextInput label="Phone" required={false} type="tel" autoComplete="off" {...ask('phone')} />
        {children}
      </div>
      <p role="status" className="visually-hidden">
        {found && found.length > 0 && (found.length === 1 ? '1 match' : `${found.length} matches`)}
      </p>
      {found && found.length > 0 && (
        <ul className={styles.found} aria-label="On record">
          {found.map((customer) => (
            <li key={customer.id}>
              <button type="button" className={styles.pick} onClick={() => pick(customer)}>
                <strong>{customer.name}</strong> {customer.phone}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Fold
        form={form}
        title="E-mail and address"
        within={['customer.email', 'customer.address']}
        holds={heldAddress}
        inner
      >
        <div className={styles.fields}>
          <TextInput label="E-mail" type="email" autoComplete="off" {...form.text('customer.email')} />
          <TextInput label="Address" autoComplete="off" {...form.text('customer.address')} />
        </div>
      </Fold>
    </>
  )
}
