'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextArea } from '@/app/_components/ui/text-area'
import { logCallSchema } from '@/lib/schemas/job'
import { logCallAction } from '../actions'

export function LogCall({ jobId }: { jobId: string }) {
  const form = useActionForm(logCallSchema, logCallAction, {
    defaultValues: { jobId, text: '' },
    onDone: () => form.form.reset(),
  })
  return (
    <ActionForm form={form} submitLabel="Log call">
      <TextArea label="Who called, and what was said" rows={2} {...form.text('text')} />
    </ActionForm>
  )
}
