'use client'
import { Choice } from '@/app/_components/ui/choice'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answers } from './answers'

type Props = {
  fields: readonly StepField[]
  answers: Answers
  onChange: (answers: Answers) => void
}

/** The readings of each chamber that stand; a new value asks whether it repeats them or replaces one. */
export function RepeatChoices({ fields, answers, onChange }: Props) {
  const read = fields.flatMap((field) => (field.repeats ? [{ field, repeats: field.repeats }] : []))
  if (read.length === 0) return null
  return (
    <div className="stack">
      {read.map(({ field, repeats }) => {
        const key = answerKey(field.kind, field.point)
        const answer = answers[key]
        const label = field.pointLabel === '' ? field.spec.label : field.pointLabel
        const isTyped = answer !== undefined && answer.text.trim() !== ''
        return (
          <div key={key}>
            <p className="soft">
              {label}: {repeats.words}
            </p>
            {isTyped && (
              <Choice
                label={`${answer.text} for ${label} is`}
                name={`repeat ${key}`}
                options={[
                  { value: 'again', label: 'Again: average it' },
                  ...repeats.values.map(({ id, text }) => ({ value: id, label: `Instead of ${text}` })),
                ]}
                value={answer.repeat ?? ''}
                onChange={(event) => onChange({ ...answers, [key]: { ...answer, repeat: event.target.value } })}
              />
            )}
          </div>
        )
      })}
    </div>
  )
}
