'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { confirmPasswordAction } from '@/app/_components/form/ask-again-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { confirmPasswordSchema } from '@/lib/schemas/person'

export function ConfirmForm({ next }: { next: string }) {
  const form = useActionForm(confirmPasswordSchema, confirmPasswordAction, {
    defaultValues: { password: '' },
    onDone: () => window.location.assign(next),
  })
  return (
    <ActionForm form={form} submitLabel="Confirm">
      <TextInput
        label="Your password"
        required
        type="password"
        autoComplete="current-password"
        {...form.text('password')}
      />
      {form.value && (
        <Notice title="Thank you">
          <p>
            The file is on its way. <a href={next}>Ask for it again</a>
          </p>
        </Notice>
      )}
    </ActionForm>
  )
}
