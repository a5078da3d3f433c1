'use client'
import type { z } from 'zod'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { changeCustomerSchema } from '@/lib/schemas/customer'
import { changeCustomerAction } from '../actions'

const labels: Readonly<Record<string, string>> = {
  ...{ name: 'Name', phone: 'Phone', otherPhone: 'Other phone', email: 'E-mail', address: 'Address', note: 'Note' },
}
const labelOf = (path: string): string => labels[path] ?? path

type Props = { fresh: z.input<typeof changeCustomerSchema>; by: string }

export function CustomerForm({ fresh, by }: Props) {
  const form = useActionForm(changeCustomerSchema, changeCustomerAction, { defaultValues: fresh })
  const isConflict = form.refusal?.code === 'conflict' && form.form.formState.isDirty
  return (
    // A conflict is shown once: both sides, below.
    <ActionForm form={form} submitLabel="Save" refusalElsewhere={isConflict}>
      <TextInput label={labelOf('name')} required autoComplete="off" {...form.text('name')} />
      <div className="row">
        <TextInput label={labelOf('phone')} required={false} type="tel" autoComplete="off" {...form.text('phone')} />
        <TextInput
          label={labelOf('otherPhone')}
          required={false}
          type="tel"
          autoComplete="off"
          {...form.text('otherPhone')}
        />
      </div>
      <TextInput label={labelOf('email')} required={false} type="email" autoComplete="off" {...form.text('email')} />
      <TextArea label={labelOf('address')} required={false} {...form.text('address')} />
      <TextArea label={labelOf('note')} required={false} hint="For the shop only" {...form.text('note')} />
      <ConflictResolver form={form} fresh={fresh} what={fresh.name} labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
