'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Check } from '@/app/_components/ui/check'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextInput } from '@/app/_components/ui/text-input'
import { cancelJobSchema } from '@/lib/schemas/ordinary'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { cancelJobAction } from '../actions'
import { AddHead } from './add-head'

/** What becomes of a job beside its work: a head more, the same again, or nothing at all. */
export function JobDeeds({ job }: { job: JobView }) {
  const [open, setOpen] = useState<'add' | 'cancel' | null>(null)
  const close = () => setOpen(null)
  return (
    <>
      {job.isOpen && <Button onClick={() => setOpen('add')}>Add a head</Button>}
      <ButtonLink href={`/counter/book?again=${job.number}`}>Book the same again</ButtonLink>
      {job.isOpen && (
        <Button variant="quiet" onClick={() => setOpen('cancel')}>
          Cancel the job
        </Button>
      )}
      <Dialog open={open === 'add'} onClose={close} title="Add a head" closeLabel="Close">
        <AddHead job={job} onDone={close} />
      </Dialog>
      <Dialog open={open === 'cancel'} onClose={close} title={`Cancel job ${job.number}`} closeLabel="Close">
        <CancelJob job={job} onDone={close} />
      </Dialog>
    </>
  )
}

type Props = { job: JobView; onDone: () => void }

function CancelJob({ job, onDone }: Props) {
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
