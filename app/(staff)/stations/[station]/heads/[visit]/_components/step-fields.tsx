'use client'
import { Choice } from '@/app/_components/ui/choice'
import { TextArea } from '@/app/_components/ui/text-area'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, isSingle, labelOf, type Answers } from './answers'
import type { CellAsks } from './cell-asks'
import { FigureFields } from './figure-fields'
import { FlowFields, InWords, PhotoField } from './later'
import type { PhotoField as PhotoFieldPart } from './photo-field'
import { ReadWith, type ReadWithProps } from './read-with'
import styles from './step.module.css'

type Props = {
  /** All of one kind. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  asks: CellAsks
  settled: ReadonlySet<string>
  onSettle: (key: string) => void
  readWith: ReadWithProps
  /** Figures are typed at this step: its choices stand close together over the cells. */
  withFigures: boolean
  /** Where a photo taken at this step belongs. */
  photoTo: Parameters<typeof PhotoFieldPart>[0]['to']
  onChange: (answers: Answers) => void
}

/** The answers of one kind: figures in a grid with the keypad, choices as large buttons, words in a box. */
export function StepFields(props: Props) {
  const first = props.fields[0]
  if (!first) return null
  if (first.spec.form === 'figure') {
    return (
      <div className={isSingle(props.fields) ? styles.one : styles.group}>
        {first.kind === 'flow' ? <FlowFields {...props} /> : <FigureFields {...props} />}
        <ReadWith kind={first.kind} label={first.spec.label} {...props.readWith} />
      </div>
    )
  }
  return (
    <>
      {props.fields.map((field) => (
        <WordField key={field.point} {...props} field={field} />
      ))}
    </>
  )
}

function WordField({ field, answers, errors, photoTo, withFigures, onChange }: Props & { field: StepField }) {
  const key = answerKey(field.kind, field.point)
  const text = answers[key]?.text ?? ''
  const { spec } = field
  const label = labelOf(field)
  const set = (value: string) => onChange({ ...answers, [key]: { text: value, notTaken: null } })
  if (field.kind === 'photo')
    return <PhotoField field={field} to={photoTo} why={text} error={errors[key]} onWhy={set} />
  const hint = [spec.hint, field.answer === null ? undefined : `${wordsOf(field)} (last reading)`]
    .filter(Boolean)
    .join(' ')
  const unlike = unlikeWords(field, text)
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
    <div className={withFigures ? styles.close : 'stack'}>
      <Choice
        label={label}
        hint={hint}
        error={errors[key]}
        name={key}
        options={spec.choices.map((choice) => ({ value: choice.value, label: choice.label }))}
        value={text}
        onChange={(event) => set(event.target.value)}
      />
      <p role="status">{unlike}</p>
      {!withFigures && spec.mayBeWords && <InWords field={field} answers={answers} onChange={onChange} />}
    </div>
  )
}

/** What was answered, as its button says it. */
const wordsOf = ({ spec, answer }: StepField) => spec.choices?.find(({ value }) => value === answer)?.label ?? answer

/** Other valves or another plug than before: the volumes then say nothing of each other. */
function unlikeWords({ kind, previous, spec }: StepField, text: string): string {
  if (kind !== 'valves-used' && kind !== 'plug-used') return ''
  if (previous === null || text === '' || text === previous) return ''
  const before = spec.choices?.find(({ value }) => value === previous)?.label ?? previous
  return `Not like for like: before it was “${before}”. The volumes cannot be held against each other.`
}
