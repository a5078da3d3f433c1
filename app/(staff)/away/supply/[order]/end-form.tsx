'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { endSupplySchema } from '@/lib/schemas/supply'
import { endSupplyAction } from '../../actions'

type Props = { orderId: string; version: number }

/** Nothing more comes of this order; its items can be ordered again. */
export function EndForm({ orderId, version }: Props) {
  const form = useActionForm(endSupplySchema, endSupplyAction, {
    defaultValues: { orderId, version, reason: '' },
  })
  return (
    <details>
      <summary>Cancel the remainder</summary>
      <ActionForm form={form} submitLabel="Cancel the remainder">
        <p>The items can then be ordered again, here or from another supplier.</p>
        <TextInput label="Reason" required {...form.text('reason')} />
      </ActionForm>
    </details>
  )
}
