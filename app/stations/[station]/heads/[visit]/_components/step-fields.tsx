'use client'
import { useState } from 'react'
import { ReadingGrid } from '@/app/_components/keypad/reading-grid'
import { Button } from '@/app/_components/ui/button'
import { Choice } from '@/app/_components/ui/choice'
import { TextArea } from '@/app/_components/ui/text-area'
import { quantities } from '@/lib/core/units/quantities'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answers } from './answers'

type Props = {
  /** All of one kind. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  onChange: (answers: Answers) => void
}

/** The answers of one kind: figures in a grid with the keypad, choices as large buttons, words in a box. */
export function StepFields(props: Props) {
  const first = props.fields[0]
  if (!first) return null
  if (first.kind === 'flow') return <FlowFields {...props} />
  if (first.spec.form === 'figure') return <FigureFields {...props} />
  return (
    <>
      {props.fields.map((field) => (
        <WordField key={field.point} {...props} field={field} />
      ))}
    </>
  )
}

const standing = (field: StepField): string | undefined =>
  field.answer === null ? (field.previous ?? undefined) : `${field.notTaken ?? field.answer} (stands)`

function FigureFields({ fields, answers, errors, onChange }: Props) {
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
                lowest: field.target.value - field.target.tolerance,
                highest: field.target.value + field.target.tolerance,
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
              values.map(({ point, text, notTaken }) => [answerKey(kind, point), { text, notTaken }]),
            ),
          })
        }
        mayBeNotTaken={kind === 'flow' || spec.mayBeWords}
        errors={Object.fromEntries(fields.map(({ point }) => [point, errors[answerKey(kind, point)] ?? '']))}
      />
    </div>
  )
}

/** Lifts of the earlier run, so that the two can be held against each other; more can be added. */
function FlowFields(props: Props) {
  const { fields } = props
  const [added, setAdded] = useState<readonly string[]>([])
  const first = fields[0] as StepField
  const ports = ['intake', 'exhaust'] as const
  const lifts = [...new Set([...fields.map((field) => field.point.split('@')[1] ?? ''), ...added])]
    .filter(Boolean)
    .sort()
  const highest = Number(lifts.at(-1) ?? 0)
  const fieldAt = (point: string): StepField =>
    fields.find((field) => field.point === point) ?? {
      ...first,
      point,
      pointLabel: point.replace('@', ' at '),
      answer: null,
      notTaken: null,
      previous: null,
    }
  return (
    <div className="stack">
      {ports.map((port) => (
        <FigureFields
          key={port}
          {...props}
          fields={lifts.map((lift) => ({
            ...fieldAt(`${port}@${lift}`),
            spec: { ...first.spec, label: `${port === 'intake' ? 'Intake' : 'Exhaust'}, cfm at each lift` },
          }))}
        />
      ))}
      <div>
        <Button onClick={() => setAdded([...added, (highest + 0.1).toFixed(3)])}>
          Add a lift: {(highest + 0.1).toFixed(3)} in
        </Button>
      </div>
    </div>
  )
}

function WordField({ field, answers, errors, onChange }: Props & { field: StepField }) {
  const key = answerKey(field.kind, field.point)
  const text = answers[key]?.text ?? ''
  const { spec } = field
  const label = field.pointLabel === '' ? spec.label : `${spec.label}, ${field.pointLabel}`
  const set = (value: string) => onChange({ ...answers, [key]: { text: value, notTaken: null } })
  const hint = [spec.hint, field.answer === null ? undefined : `Stands: ${field.answer}`]
    .filter(Boolean)
    .join(' ')
  const words = spec.choices?.every((choice) => choice.value !== text) ? text : ''
  if (!spec.choices) {
    return (
      <TextArea
        label={label}
        hint={hint}
        error={errors[key]}
        value={text}
        onChange={(event) => set(event.target.value)}
        rows={2}
      />
    )
  }
  return (
    <div className="stack">
      <Choice
        label={label}
        hint={hint}
        error={errors[key]}
        name={key}
        options={spec.choices.map((choice) => ({ value: choice.value, label: choice.label }))}
        value={text}
        onChange={(event) => set(event.target.value)}
      />
      {spec.mayBeWords && (
        <details open={words !== ''}>
          <summary>In words instead</summary>
          <TextArea
            label={`${label}, in words`}
            value={words}
            onChange={(event) => set(event.target.value)}
            rows={1}
          />
        </details>
      )}
    </div>
  )
}
