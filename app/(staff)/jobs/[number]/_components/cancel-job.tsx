'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import { cancelJobSchema } from '@/lib/schemas/ordinary'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { cancelJobAction } from '../actions'

type Props = { job: JobView; onDone: () => void }

/** What becomes of the heads of a job that is not done after all. */
export function CancelJob({ job, onDone }: Props) {
  const form = useActionForm(cancelJobSchema, cancelJobAction, {
    defaultValues: { jobId: job.id, version: job.version, reason: '', removePrices: true },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Cancel the job">
      <p>
        Heads that are here are returned as is; what did not come is taken off. What was paid beyond the rest is owed
        back.
      </p>
      <Check label="Remove the prices that are not invoiced" {...form.text('removePrices')} />
      <TextInput label="Reason" required {...form.text('reason')} />
    </ActionForm>
  )
}
