'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { acceptOrderSchema, repromiseSchema } from '@/lib/schemas/outside'
import { acceptOrderAction, repromiseAction } from '../actions'

type Props = { orderId: string; version: number }

/** The vendor gave another day; every promise stays on record. */
export function RepromiseForm({ orderId, version }: Props) {
  const form = useActionForm(repromiseSchema, repromiseAction, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
  })
  return (
    <details>
      <summary>The vendor gave another day</summary>
      <ActionForm form={form} submitLabel="Note the new day">
        <TextInput label="Promised back on" type="date" required {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}

/** Sent is not yet taken on: the vendor says so, often with a day. */
export function AcceptForm({ orderId, version }: Props) {
  const form = useActionForm(acceptOrderSchema, acceptOrderAction, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
  })
  return (
    <details>
      <summary>The vendor accepted it</summary>
      <ActionForm form={form} submitLabel="Note that they accepted">
        <TextInput label="Day they gave then" type="date" required={false} {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}
