'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { NewPassword } from '@/app/_components/form/new-password'
import { useActionForm } from '@/app/_components/form/use-action-form'
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
      <NewPassword
        label="New password"
        more="A short sentence is easy to remember."
        first={form.text('password')}
        again={form.text('again')}
      />
    </ActionForm>
  )
}
