'use client'
import { useState } from 'react'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Choice } from '@/app/_components/ui/choice'
import { WantedFields } from '@/app/_components/wanted/wanted-fields'
import { wantedLabel } from '@/app/_components/wanted/wanted-label'
import { typedWantedKeys } from '@/lib/core/wanted/figures'
import { changeHeadWantedSchema, changeJobWantedSchema } from '@/lib/schemas/wanted'
import type { WantedOfHead, WantedView } from '@/lib/use-cases/jobs/wanted-view'
import { changeHeadWantedAction, changeJobWantedAction } from '../actions'

export type WantedProps = { jobId: string; jobNumber: string; version: number; wanted: WantedView }
type Close = { onClose: () => void }

/** The job's figures, or those in which one of its heads departs from them. */
export function ChangeWantedForm({ onClose, ...props }: WantedProps & Close) {
  const [whose, setWhose] = useState('')
  const { heads } = props.wanted
  const head = heads.find(({ visitId }) => visitId === whose)
  return (
    <div className="stack">
      {heads.length > 0 && (
        <Choice
          label="For"
          name="wanted-for"
          options={[
            { value: '', label: 'all heads of this job' },
            ...heads.map(({ visitId, tag }) => ({ value: visitId, label: `${tag} alone` })),
          ]}
          value={head ? whose : ''}
          onChange={(event) => setWhose(event.target.value)}
        />
      )}
      {head ? (
        <HeadWanted key={head.visitId} head={head} onClose={onClose} />
      ) : (
        <JobWanted {...props} onClose={onClose} />
      )}
    </div>
  )
}

const Cancel = ({ onClose }: Close) => (
  <Button variant="quiet" onClick={onClose}>
    Cancel
  </Button>
)

function JobWanted({ jobId, jobNumber, version, wanted, onClose }: WantedProps & Close) {
  const fresh = { jobId, version, wanted: wanted.own }
  const form = useActionForm(changeJobWantedSchema, changeJobWantedAction, { defaultValues: fresh, onDone: onClose })
  return (
    <ActionForm form={form} submitLabel="Save the wanted figures" actions={<Cancel onClose={onClose} />}>
      <WantedFields
        keys={typedWantedKeys}
        hints={wanted.hints}
        figure={(key, words) => <FormFigure key={key} form={form} name={`wanted.${key}`} {...words} />}
      />
      <ConflictResolver
        form={form}
        fresh={fresh}
        what={`Wanted figures of job ${jobNumber}`}
        labelOf={wantedLabel}
        by=""
      />
    </ActionForm>
  )
}

function HeadWanted({ head, onClose }: { head: WantedOfHead } & Close) {
  const { visitId, version, own, hints, tag } = head
  const fresh = { visitId, version, wanted: own }
  const form = useActionForm(changeHeadWantedSchema, changeHeadWantedAction, { defaultValues: fresh, onDone: onClose })
  return (
    <ActionForm form={form} submitLabel={`Save for ${tag}`} actions={<Cancel onClose={onClose} />}>
      <p className="soft">Only where {tag} departs from the other heads.</p>
      <WantedFields
        keys={typedWantedKeys}
        hints={hints}
        figure={(key, words) => <FormFigure key={key} form={form} name={`wanted.${key}`} {...words} />}
      />
      <ConflictResolver form={form} fresh={fresh} what={`Wanted figures of ${tag}`} labelOf={wantedLabel} by="" />
    </ActionForm>
  )
}
