'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { setOwnPinSchema } from '@/lib/schemas/person'
import { setOwnPinAction } from '../actions'

const blank = { password: '', pin: '', again: '' }

export function PinForm() {
  const form = useActionForm(setOwnPinSchema, setOwnPinAction, {
    defaultValues: blank,
    onDone: () => form.form.reset(blank),
  })
  // Digits for a field that no browser offers to keep: a password manager has no place on a tablet of many people.
  const digits = { type: 'password', inputMode: 'numeric', maxLength: 6, autoComplete: 'one-time-code' } as const
  return (
    <ActionForm form={form} submitLabel="Save PIN">
      <TextInput
        label="Your password"
        required
        type="password"
        autoComplete="current-password"
        {...form.text('password')}
      />
      <TextInput
        label="New PIN"
        hint="Six digits. Not repeated, not in order. It ends what you have open on tablets."
        required
        {...digits}
        {...form.text('pin')}
      />
      <TextInput label="New PIN again" required {...digits} {...form.text('again')} />
      {form.value && (
        <Notice title="Saved">
          <p>Your PIN is saved.</p>
        </Notice>
      )}
    </ActionForm>
  )
}
