'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { ReadingGrid, type ReadingCell, type ReadingEntry } from '@/app/_components/keypad/reading-grid'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { quantities } from '@/lib/core/units/quantities'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, isSingle, type Answers } from './answers'
import { unitNames, type ReadWithProps } from './read-with'
import type { CellAsks } from './cell-asks'
import styles from './step.module.css'

/** Only chambers that were read before load it; not from `later.tsx`, which loads a part that stands on this one. */
const RepeatChoices = dynamic(() => untilHere(() => import('./repeat-choices').then((file) => file.RepeatChoices)), {
  loading: nothingYet,
})

type Props = {
  /** All of one kind. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  asks: CellAsks
  /** Cells that were left, or sent: what is said about a figure waits until it is typed. */
  settled: ReadonlySet<string>
  onSettle: (key: string) => void
  /** Whose choice of units counts on this device; left out: the choice for this kind. */
  readWith?: ReadWithProps | undefined
  onChange: (answers: Answers) => void
}

const standing = (field: StepField): string | undefined =>
  field.answer === null ? (field.previous ?? undefined) : `${field.notTaken ?? field.answer} (last reading)`

/** The second cell of an unlikely figure. */
const againOf = (point: string): string => `again ${point}`
const isAgain = (point: string): boolean => point.startsWith('again ')
const pointOf = (point: string): string => (isAgain(point) ? point.slice('again '.length) : point)

/** Figures of one kind in a grid with the keypad, what is wanted, expected and stood there before beside each. */
export function FigureFields(props: Props) {
  const { fields, answers, errors, onChange, onSettle } = props
  const { kind, spec } = fields[0] as StepField
  const quantity = spec.quantity
  if (!quantity) return null
  const keyAt = (point: string): string => answerKey(kind, pointOf(point))

  function take(values: readonly ReadingEntry[]) {
    const next = { ...answers }
    for (const { point, text, notTaken } of values) {
      const was = next[keyAt(point)] ?? { text: '', notTaken: null }
      // Another figure is asked about anew.
      if (isAgain(point)) next[keyAt(point)] = { ...was, again: text }
      else if (was.text !== text || was.notTaken !== notTaken) next[keyAt(point)] = { text, notTaken }
    }
    onChange(next)
  }

  return (
    <div className={styles.group}>
      {!isSingle(fields) && <h2>{spec.label}</h2>}
      {spec.hint && <p className="soft">{spec.hint}</p>}
      <ReadingGrid
        label={spec.label}
        quantity={quantity}
        unit={quantity === 'cutDepth' ? 'thou' : quantities[quantity].unit}
        units={quantities[quantity].keypadUnits}
        keepUnitAs={props.readWith ? unitNames(props.readWith, kind) : kind}
        cells={fields.flatMap((field) => cellsOf(field, props))}
        values={fields.flatMap(({ point }) => {
          const { text, notTaken, again = '' } = answers[keyAt(point)] ?? { text: '', notTaken: null }
          return [
            { point, text, notTaken },
            { point: againOf(point), text: again, notTaken: null },
          ]
        })}
        onChange={take}
        onSettle={(point) => onSettle(keyAt(point))}
        mayBeNotTaken={kind === 'flow' || spec.mayBeWords}
        errors={Object.fromEntries(fields.map(({ point }) => [point, errors[answerKey(kind, point)] ?? '']))}
      />
      {fields.some(({ repeats }) => repeats) && <RepeatChoices fields={fields} answers={answers} onChange={onChange} />}
    </div>
  )
}

/** The cell of a field; under an unlikely figure a second one, to type it again. */
function cellsOf(field: StepField, { answers, asks, settled, errors }: Props): ReadingCell[] {
  const { kind, point, spec, target } = field
  const key = answerKey(kind, point)
  const ask = asks[key]
  const answer = answers[key]
  const label = field.pointLabel === '' ? spec.label : field.pointLabel
  const asked = settled.has(key) || answer?.again !== undefined
  const unlikely = asked && ask !== undefined && ask.unlikely !== ''
  const cell: ReadingCell = {
    point,
    label,
    previous: standing(field),
    target: target?.text,
    expected: target && ask?.asWanted ? undefined : ask?.expected,
    limits: target ? { lowest: target.lowest, highest: target.highest } : undefined,
    stop: asked ? ask?.stop : '',
    caution: unlikely ? `${ask.unlikely} ${ask.confirmed ? 'Confirmed.' : 'Type it again to keep it.'}` : '',
    slip: unlikely && !ask.confirmed ? ask.slip : null,
  }
  const refused = /Type it again/.test(errors[key] ?? '')
  if (!unlikely && !refused) return [cell]
  const differs = answer?.again !== undefined && answer.again !== '' && ask !== undefined && !ask.confirmed
  return [
    cell,
    {
      point: againOf(point),
      label: `Again: ${label}`,
      caution: differs ? 'Not the figure beside it. Correct one of the two.' : '',
    },
  ]
}
