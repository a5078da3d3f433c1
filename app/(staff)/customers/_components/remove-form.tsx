'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import { blankCustomerSchema } from '@/lib/schemas/customer'
import { blankCustomerAction } from '../actions'

type Props = { customerId: string; version: number; name: string }

/** The reason, and the second question. */
export function RemoveForm({ customerId, version, name }: Props) {
  const form = useActionForm(blankCustomerSchema, blankCustomerAction, {
    defaultValues: { customerId, version, reason: '', confirmed: false as unknown as true },
  })
  return (
    <ActionForm form={form} submitLabel="Remove for good">
      <TextInput label="Reason" required hint="Who asked for it, and when" {...form.text('reason')} />
      <Check label={`Yes, remove all personal data of ${name}`} {...form.text('confirmed')} />
    </ActionForm>
  )
}
