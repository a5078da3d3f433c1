'use client'
import { useEffect } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { setPasswordSchema } from '@/lib/schemas/person'
import { setPasswordAction } from '../actions'

export function PasswordForm({ personId, version }: { personId: string; version: number }) {
  const form = useActionForm(setPasswordSchema, setPasswordAction, {
    defaultValues: { personId, version, password: '' },
    onDone: () => form.form.setValue('password', ''),
  })
  // A new password takes the place of whatever was there: nothing of another change can be lost by going on from it.
  const { setValue } = form.form
  useEffect(() => setValue('version', version), [setValue, version])
  return (
    <ActionForm form={form} submitLabel="Save password">
      <TextInput
        label="New password"
        hint="Signs them out everywhere. At least 8 characters; 15 or more are better."
        required
        type="password"
        autoComplete="new-password"
        {...form.text('password')}
      />
      {form.value && (
        <Notice title="Saved">
          <p>The new password is saved.</p>
        </Notice>
      )}
    </ActionForm>
  )
}
