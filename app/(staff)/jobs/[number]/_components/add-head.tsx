'use client'
import { useEffect, useRef, useState } from 'react'
import { useWatch } from 'react-hook-form'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { IsItHead } from '@/app/_components/is-it/is-it'
import { useAlike } from '@/app/_components/is-it/use-alike'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { emptyHead } from '@/lib/schemas/job'
import { addHeadSchema, type AddHeadForm } from '@/lib/schemas/ordinary'
import type { AlikeHeadSeen } from '@/lib/use-cases/customers/see-alike'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { addHeadAction } from '../actions'

type Props = { job: JobView; onDone: () => void }

/** A head more on a job. One that is like a head on record is asked about, as at a booking. */
export function AddHead({ job, onDone }: Props) {
  const form = useActionForm(addHeadSchema, addHeadAction, {
    defaultValues: {
      jobId: job.id,
      heads: [{ ...emptyHead(), castingId: job.pairs[0]?.castingId ?? '' }],
      reason: '',
      notThese: { customers: [], heads: [] },
    },
    onDone,
  })
  const { control, setValue, getValues, setFocus } = form.form
  const [[head = emptyHead()], notThese] = useWatch({ control, name: ['heads', 'notThese'] })
  const { headId, stamp, tag } = head
  const customer = { id: job.customer.id, name: '', phone: '', email: '' }
  const seen = useAlike({ customer, heads: [{ headId, stamp, tag }] }, form.refusal)
  const asked = (seen?.heads ?? []).filter((one) => !notThese?.heads.includes(one.headId))
  const answered = useFocusAfter(asked.length, () => setFocus('heads.0.side'))

  const take = (known: Partial<AddHeadForm['heads'][number]>) => {
    setValue('heads.0', { ...getValues('heads.0'), ...known }, { shouldDirty: true })
    form.clear()
    answered()
  }
  const takeKnown = (known: AlikeHeadSeen) =>
    take({ headId: known.headId, stamp: known.stamp, marks: known.marks, castingId: known.castingId ?? '' })
  const another = (known: AlikeHeadSeen) => {
    setValue('notThese.heads', [...(getValues('notThese.heads') ?? []), known.headId])
    form.clear()
    answered()
  }
  return (
    <ActionForm form={form} submitLabel="Add the head" refusalElsewhere={form.refusal?.alike !== undefined}>
      <p>It gets the work and the target of the heads of its casting.</p>
      {headId === '' ? (
        <Select
          label="Casting"
          options={job.pairs.map(({ castingId, casting }) => ({ value: castingId ?? '', label: casting }))}
          {...form.text('heads.0.castingId')}
        />
      ) : (
        <div className="row spread">
          <span>
            Was here before: <strong>{[stamp, head.marks].filter(Boolean).join(', ') || 'without stamp'}</strong>
          </span>
          <Button onClick={() => take({ headId: '', stamp: '', marks: '' })}>Not this one</Button>
        </div>
      )}
      <TextInput label="Bank or side" {...form.text('heads.0.side')} />
      <TextInput label="Tag number" hint="Empty: the next number." {...form.text('heads.0.tag')} />
      {headId === '' && <TextInput label="Stamp on this head" {...form.text('heads.0.stamp')} />}
      {form.refusal?.alike && (
        <Notice kind="stop" title="Not added yet" ref={form.refusalRef}>
          <p>{form.refusal.message}</p>
        </Notice>
      )}
      <IsItHead heads={asked} at={0} onYes={takeKnown} onNo={another} />
      <FieldError message={form.text('heads.0.headId').error} />
      <TextInput label="Reason" required {...form.text('reason')} />
    </ActionForm>
  )
}

const FieldError = ({ message }: { message: string | undefined }) => message && <p role="alert">{message}</p>

/** The button that answered is gone with its question: once the last is answered, focus goes on. */
function useFocusAfter(open: number, go: () => void): () => void {
  const waits = useRef(false)
  const [, again] = useState(0)
  useEffect(() => {
    if (!waits.current || open > 0) return
    waits.current = false
    go()
  })
  return () => {
    waits.current = true
    again((many) => many + 1)
  }
}
