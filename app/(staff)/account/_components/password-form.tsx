'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { changeOwnPasswordSchema } from '@/lib/schemas/person'
import { changeOwnPasswordAction } from '../actions'

/** One's own password, with the old one. It ends in the sign-in page. */
export function PasswordForm({ signIn }: { signIn: string }) {
  const form = useActionForm(changeOwnPasswordSchema, changeOwnPasswordAction, {
    defaultValues: { password: '', next: '', again: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Change password">
      <input type="text" name="username" autoComplete="username" value={signIn} readOnly hidden />
      <TextInput
        label="Your password now"
        required
        type="password"
        autoComplete="current-password"
        {...form.text('password')}
      />
      <TextInput
        label="New password"
        hint="At least 8 characters; 15 or more are better. It signs you out everywhere."
        required
        type="password"
        autoComplete="new-password"
        {...form.text('next')}
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
