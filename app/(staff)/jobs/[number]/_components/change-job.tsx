'use client'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { changeJobSchema, type ChangeJobForm as ChangeJobValues } from '@/lib/schemas/job'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { changeJobAction } from '../actions'

const valuesOf = (job: JobView): ChangeJobValues => ({
  jobId: job.id,
  version: job.version,
  promiseOn: job.promiseOn ?? '',
  urgent: job.urgent,
  note: job.note,
  partsPlace: job.partsPlace,
  reason: '',
  visits: job.heads.map(({ visitId, version, target, side, rackPlace }) => ({
    visitId,
    version,
    target,
    side,
    rackPlace,
  })),
})

/** Promise, urgency, note, and each head's target and places. */
export function ChangeJobForm({ job, onClose }: { job: JobView; onClose: () => void }) {
  const form = useActionForm(changeJobSchema, changeJobAction, {
    defaultValues: valuesOf(job),
    onDone: onClose,
  })
  return (
    <section className="part" aria-label="Change the job">
      <ActionForm
        form={form}
        submitLabel="Save the change"
        actions={
          <Button variant="quiet" onClick={onClose}>
            Cancel
          </Button>
        }
      >
        <div className={styles.fields}>
          <TextInput label="Promise date" type="date" {...form.text('promiseOn')} />
          <Check label="Urgent" {...form.text('urgent')} />
          <TextArea label="Note" {...form.text('note')} />
          <TextInput label="Parts location" {...form.text('partsPlace')} />
        </div>
        {job.heads.map((head, at) => (
          <fieldset key={head.visitId} className={styles.head}>
            <legend>{head.tag}</legend>
            <div className={styles.fields}>
              {head.hasChambers && (
                <FormFigure form={form} name={`visits.${at}.target`} label="Target chamber" quantity="chamberVolume" />
              )}
              <TextInput label="Bank or side" {...form.text(`visits.${at}.side`)} />
              <TextInput label="Rack location" {...form.text(`visits.${at}.rackPlace`)} />
            </div>
          </fieldset>
        ))}
        <TextInput label="Reason" hint="Needed when the promise or a target changes." {...form.text('reason')} />
        <ConflictResolver
          form={form}
          fresh={valuesOf(job)}
          what={`Job ${job.number}`}
          labelOf={(path) => labelOf(path, job)}
          by=""
        />
      </ActionForm>
    </section>
  )
}

const labels: Readonly<Record<string, string>> = {
  promiseOn: 'promise date',
  urgent: 'urgent',
  note: 'note',
  partsPlace: 'parts location',
  target: 'target',
  side: 'bank or side',
  rackPlace: 'rack location',
}

/** "visits.1.target" → "T-0402, target". */
function labelOf(path: string, job: JobView): string {
  const [first = '', at = '', field = ''] = path.split('.')
  if (first !== 'visits') return labels[first] ?? first
  return `${job.heads[Number(at)]?.tag ?? ''}, ${labels[field] ?? field}`
}
