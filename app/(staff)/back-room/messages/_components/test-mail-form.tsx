'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { testMailSchema } from '@/lib/schemas/message'
import { sendTestMailAction } from '../actions'

export function TestMailForm({ to }: { to: string }) {
  const form = useActionForm(testMailSchema, sendTestMailAction, { defaultValues: { to } })
  return (
    <ActionForm form={form} submitLabel="Send a test mail">
      <TextInput label="To" type="email" required {...form.text('to')} />
      {form.value && <Notice title="The mail server took it">Look for it in the mailbox of {form.value.to}.</Notice>}
    </ActionForm>
  )
}
