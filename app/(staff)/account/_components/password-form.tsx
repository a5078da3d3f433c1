'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { NewPassword } from '@/app/_components/form/new-password'
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
      <NewPassword
        label="New password"
        more="It signs you out everywhere."
        first={form.text('next')}
        again={form.text('again')}
      />
    </ActionForm>
  )
}
