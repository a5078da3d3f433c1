'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { acceptOrderSchema, repromiseSchema } from '@/lib/schemas/outside'
import { repromiseSupplySchema } from '@/lib/schemas/supply'
import { acceptOrderAction, repromiseAction, repromiseSupplyAction } from '../actions'

type Order = { orderId: string; version: number }

const forms = {
  outside: [repromiseSchema, repromiseAction],
  supply: [repromiseSupplySchema, repromiseSupplyAction],
} as const

/** Another day was promised; every promise stays on record. */
export function RepromiseForm({ kind, orderId, version }: Order & { kind: keyof typeof forms }) {
  const [schema, action] = forms[kind]
  const form = useActionForm(schema, action, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
  })
  return (
    <details>
      <summary>Change the promised date</summary>
      <ActionForm form={form} submitLabel="Save the new date">
        <TextInput label="New promised date" type="date" required {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}

/** The vendor takes the order on, often with a day. */
export function AcceptForm({ orderId, version }: Order) {
  const form = useActionForm(acceptOrderSchema, acceptOrderAction, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
  })
  return (
    <details>
      <summary>Vendor accepted the order</summary>
      <ActionForm form={form} submitLabel="Save acceptance">
        <TextInput label="Promised date" type="date" required={false} {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}
