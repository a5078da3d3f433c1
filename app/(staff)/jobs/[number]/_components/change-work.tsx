'use client'
import { useWatch } from 'react-hook-form'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/choice'
import { FieldGroup } from '@/app/_components/ui/field'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import type { WorkId } from '@/lib/core/route/step-ids'
import { orderableWork } from '@/lib/core/shop/orderable-work'
import { changeOrderedWorkSchema } from '@/lib/schemas/job'
import type { JobHead } from '@/lib/use-cases/jobs/head-view'
import { changeOrderedWorkAction } from '../actions'

export type WorkProps = { jobId: string; heads: readonly JobHead[]; rules: RouteRules }

const versionsOf = (heads: readonly JobHead[], chosen: readonly string[]) =>
  heads.filter((head) => chosen.includes(head.visitId)).map(({ visitId, version }) => ({ visitId, version }))

/** Lines of ordered work added or taken off, on some or all heads of a pair. */
export function ChangeWorkForm({ jobId, heads, rules, onClose }: WorkProps & { onClose: () => void }) {
  const all = heads.map((head) => head.visitId)
  const form = useActionForm(changeOrderedWorkSchema, changeOrderedWorkAction, {
    defaultValues: { jobId, visits: versionsOf(heads, all), add: [], end: [], reason: '' },
    onDone: onClose,
  })
  const { setValue } = form.form
  const [visits, add, end] = useWatch({ control: form.form.control, name: ['visits', 'add', 'end'] })
  const chosen = visits.map((visit) => visit.visitId)
  const conflict = form.refusal?.code === 'conflict'

  const name = (work: WorkId) => workLabel(work, rules)
  const on = heads.filter((head) => chosen.includes(head.visitId))
  const has = (head: JobHead, work: WorkId) => head.ordered.some((line) => line.work === work)
  const stands = (work: WorkId) => on.length > 0 && on.every((head) => has(head, work))
  const set = (work: WorkId, wanted: boolean) => {
    const adding = add.filter((line) => line.work !== work)
    setValue('end', toggled(end, { value: work, checked: !wanted && stands(work) }))
    setValue('add', wanted && !stands(work) ? [...adding, { work, note: '' }] : adding)
  }
  const choose = (box: { value: string; checked: boolean }) => {
    setValue('visits', versionsOf(heads, toggled(chosen, box)))
    setValue('add', [])
    setValue('end', [])
  }
  return (
    <ActionForm
      form={form}
      submitLabel="Change the order"
      actions={
        <>
          {conflict && (
            <Button onClick={() => setValue('visits', versionsOf(heads, chosen))}>
              I have looked at what it says now
            </Button>
          )}
          <Button variant="quiet" onClick={onClose}>
            Leave it as it is
          </Button>
        </>
      }
    >
      {heads.length > 1 && (
        <CheckList
          label="On which heads"
          name="visits"
          options={heads.map((head) => ({ value: head.visitId, label: head.tag }))}
          values={chosen}
          onChange={(event) => choose(event.target)}
          error={form.text('visits').error}
        />
      )}
      <div className={styles.work}>
        {orderableWork(rules).map((group) => (
          <FieldGroup key={group.label} id={`change-${group.label.replaceAll(' ', '-')}`} label={group.label}>
            {group.work.map((work) => {
              const only = stands(work) ? [] : on.filter((head) => has(head, work)).map((head) => head.tag)
              return (
                <Check
                  key={work}
                  label={only.length > 0 ? `${name(work)} (now on ${only.join(', ')})` : name(work)}
                  checked={stands(work) ? !end.includes(work) : add.some((line) => line.work === work)}
                  onChange={(event) => set(work, event.target.checked)}
                />
              )
            })}
          </FieldGroup>
        ))}
      </div>
      <p role="status">
        {[
          add.length > 0 && `Added: ${add.map((line) => name(line.work)).join(', ')}.`,
          end.length > 0 && `Taken off: ${end.map(name).join(', ')}.`,
        ]
          .filter(Boolean)
          .join(' ') || 'Nothing changed yet.'}
      </p>
      <TextInput
        label="Why"
        hint="The customer called, a finding, a mistake at booking…"
        required
        {...form.text('reason')}
      />
    </ActionForm>
  )
}
