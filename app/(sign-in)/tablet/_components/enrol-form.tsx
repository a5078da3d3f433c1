'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { enrolTabletSchema } from '@/lib/schemas/tablet'
import { enrolTabletAction } from '../actions'

export function EnrolForm() {
  const form = useActionForm(enrolTabletSchema, enrolTabletAction, {
    defaultValues: { code: '' },
    onDone: () => window.location.assign('/sign-in'),
  })
  return (
    <ActionForm form={form} submitLabel="Enrol this tablet">
      <TextInput
        label="One-time code"
        hint="Two groups of four characters, shown to the owner under Back room, Tablets"
        required
        autoFocus
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        {...form.text('code')}
      />
    </ActionForm>
  )
}
