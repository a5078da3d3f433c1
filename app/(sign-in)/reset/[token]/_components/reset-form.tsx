'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { resetPasswordSchema } from '@/lib/schemas/person'
import { resetPasswordAction } from '../actions'

export function ResetForm({ token, signIn }: { token: string; signIn: string }) {
  const form = useActionForm(resetPasswordSchema, resetPasswordAction, {
    defaultValues: { token, password: '', again: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Save password">
      {/* So that a password manager keeps the name with it. */}
      <input type="text" name="username" autoComplete="username" value={signIn} readOnly hidden />
      <TextInput
        label="New password"
        hint="At least 8 characters; 15 or more are better. A short sentence is easy to remember."
        required
        type="password"
        autoComplete="new-password"
        {...form.text('password')}
      />
      <TextInput
        label="New password again"
        required
        type="password"
        autoComplete="new-password"
        {...form.text('again')}
      />
    </ActionForm>
  )
}
