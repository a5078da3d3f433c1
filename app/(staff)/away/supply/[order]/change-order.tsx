'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { endSupplySchema, repromiseSupplySchema } from '@/lib/schemas/supply'
import { endSupplyAction, repromiseSupplyAction } from '../../actions'

type Props = { orderId: string; version: number }

/** The supplier gave another day; every promise stays on record. */
export function RepromiseForm({ orderId, version }: Props) {
  const form = useActionForm(repromiseSupplySchema, repromiseSupplyAction, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
  })
  return (
    <details>
      <summary>The supplier gave another day</summary>
      <ActionForm form={form} submitLabel="Note the new day">
        <TextInput label="Promised by" type="date" required {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}

/** Nothing more comes of this order; what it was for can be ordered again. */
export function EndForm({ orderId, version }: Props) {
  const form = useActionForm(endSupplySchema, endSupplyAction, {
    defaultValues: { orderId, version, reason: '' },
  })
  return (
    <details>
      <summary>The rest does not come</summary>
      <ActionForm form={form} submitLabel="End this order">
        <p>What it was for can then be ordered again, here or elsewhere.</p>
        <TextInput label="Why" required {...form.text('reason')} />
      </ActionForm>
    </details>
  )
}
