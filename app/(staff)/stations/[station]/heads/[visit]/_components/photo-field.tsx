'use client'
import { useId } from 'react'
import { AddPhoto } from '@/app/_components/photo/add-photo'
import { FieldGroup } from '@/app/_components/ui/field'
import { TextInput } from '@/app/_components/ui/text-input'
import { photoTaken } from '@/lib/core/readings/photo-answer'
import type { StepField } from '@/lib/use-cases/stations/see-step'

type Props = {
  field: StepField
  /** Where the photo belongs. */
  to: { readonly visitId: string; readonly stepId: StepIdOfPhoto; readonly occurrence: string }
  why: string
  error: string | undefined
  onWhy: (why: string) => void
}
type StepIdOfPhoto = Parameters<typeof AddPhoto>[0]['to']['stepId']

/** The one question that a photo answers: taken here, or in words why there is none. */
export function PhotoField({ field, to, why, error, onWhy }: Props) {
  const id = useId()
  const taken = field.answer === photoTaken
  return (
    <FieldGroup id={id} label={field.spec.label} error={error} hint={taken && 'Taken: it stands below.'}>
      <AddPhoto to={to} onKept={() => onWhy('')} />
      {(!taken || why !== '') && (
        <TextInput
          label="No photo: why"
          hint={field.answer === null || taken ? undefined : `${field.answer} (last reading)`}
          value={why}
          onChange={(event) => onWhy(event.target.value)}
        />
      )}
    </FieldGroup>
  )
}
