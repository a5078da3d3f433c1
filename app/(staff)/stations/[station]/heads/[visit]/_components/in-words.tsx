'use client'
import { TextArea } from '@/app/_components/ui/text-area'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, labelOf, type Answers } from './answers'

type Props = { field: StepField; answers: Answers; onChange: (answers: Answers) => void }

/** An answer that no button has. */
export function InWords({ field, answers, onChange }: Props) {
  const { spec } = field
  if (!spec.choices || !spec.mayBeWords) return null
  const key = answerKey(field.kind, field.point)
  const { text = '' } = answers[key] ?? {}
  const words = spec.choices.every(({ value }) => value !== text) ? text : ''
  const label = `${labelOf(field)}, in words`
  return (
    <details open={words !== ''}>
      <summary>{label}</summary>
      <TextArea
        label={label}
        value={words}
        onChange={(event) => onChange({ ...answers, [key]: { text: event.target.value, notTaken: null } })}
        rows={1}
      />
    </details>
  )
}
