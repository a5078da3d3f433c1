'use client'
import { withdrawPhotoSchema } from '@/lib/schemas/photo'
import { ActionForm } from '../form/action-form'
import { useActionForm } from '../form/use-action-form'
import { TextInput } from '../ui/text-input'
import { withdrawPhotoAction } from './actions'

export function WithdrawForm({ photoId, onGone }: { photoId: string; onGone: () => void }) {
  const form = useActionForm(withdrawPhotoSchema, withdrawPhotoAction, {
    defaultValues: { photoId, reason: '' },
    onDone: onGone,
  })
  return (
    <ActionForm form={form} submitLabel="Withdraw it">
      <TextInput
        label="Why"
        hint="For example a photo of another head. Nobody sees it any more; the record shows that it was here."
        required
        {...form.text('reason')}
      />
    </ActionForm>
  )
}
