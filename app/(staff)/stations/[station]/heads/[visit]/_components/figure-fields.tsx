'use client'
import { ReadingGrid } from '@/app/_components/keypad/reading-grid'
import { quantities } from '@/lib/core/units/quantities'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answers } from './answers'
import { RepeatChoices } from './repeat-choices'

type Props = {
  /** All of one kind. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  onChange: (answers: Answers) => void
}

const standing = (field: StepField): string | undefined =>
  field.answer === null ? (field.previous ?? undefined) : `${field.notTaken ?? field.answer} (stands)`

/** Figures of one kind in a grid with the keypad, what stands or stood there beside each. */
export function FigureFields({ fields, answers, errors, onChange }: Props) {
  const { kind, spec } = fields[0] as StepField
  const quantity = spec.quantity
  if (!quantity) return null
  return (
    <div className="stack">
      <h2>{spec.label}</h2>
      {spec.hint && <p className="soft">{spec.hint}</p>}
      <ReadingGrid
        label={spec.label}
        quantity={quantity}
        unit={quantities[quantity].unit}
        units={quantities[quantity].keypadUnits}
        cells={fields.map((field) => ({
          point: field.point,
          label: field.pointLabel === '' ? spec.label : field.pointLabel,
          previous: standing(field),
          target: field.target?.text,
          limits: field.target
            ? {
                lowest: field.target.lowest,
                highest: field.target.highest,
              }
            : undefined,
        }))}
        values={fields.map(({ point }) => ({
          point,
          ...(answers[answerKey(kind, point)] ?? { text: '', notTaken: null }),
        }))}
        onChange={(values) =>
          onChange({
            ...answers,
            ...Object.fromEntries(
              values.map(({ point, text, notTaken }) => {
                const was = answers[answerKey(kind, point)]
                // Another figure is asked about anew.
                const same = was?.text === text && was.notTaken === notTaken
                return [answerKey(kind, point), same ? was : { text, notTaken }]
              }),
            ),
          })
        }
        mayBeNotTaken={kind === 'flow' || spec.mayBeWords}
        errors={Object.fromEntries(fields.map(({ point }) => [point, errors[answerKey(kind, point)] ?? '']))}
      />
      <RepeatChoices fields={fields} answers={answers} onChange={onChange} />
    </div>
  )
}
