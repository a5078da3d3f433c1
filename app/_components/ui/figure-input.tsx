'use client'
import { useId, type FocusEventHandler, type Ref } from 'react'
import { quantities, type Quantity } from '@/lib/core/units/quantities'
import { fromCell, toCell } from '../keypad/figure-text'
import { markFor, type Limits } from '../keypad/validation-hint'
import { Field, controlProps, type FieldWords } from './field'
import styles from './field.module.css'
import { Sign } from './sign'

type Props = FieldWords & {
  quantity: Quantity
  /** The unit beside the field, in which a bare figure is meant; left out: the quantity's own. */
  unit?: string
  /** As typed; in a unit other than the quantity's own it carries it: "18 thou". */
  value: string
  onText: (text: string) => void
  onBlur?: FocusEventHandler<HTMLInputElement>
  limits?: Limits
  id?: string
  name?: string
  disabled?: boolean
  ref?: Ref<HTMLInputElement>
}

/** A figure typed as text: takes .3415, 0,3415, 1/64, 10 thou, +.010, and says what it understood. */
export function FigureInput(props: Props) {
  const { label, hint, error, required, quantity, value, onText, limits, id, ...input } = props
  const own = quantities[quantity].unit
  const { unit = own, ...rest } = input
  const ownId = useId()
  const at = id ?? ownId
  const mark = markFor(value, quantity, limits)
  return (
    <Field id={at} label={label} hint={hint} error={error} required={required}>
      <div className={styles.figureRow}>
        <input
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          {...rest}
          {...controlProps(at, { hint, error, required }, `${at}-echo`)}
          className={`${styles.control} ${styles.figureControl}`}
          value={toCell(value, unit, own)}
          onChange={(event) => onText(fromCell(event.target.value, unit, own))}
        />
        {unit && <span className={styles.unit}>{unit}</span>}
      </div>
      <p id={`${at}-echo`} aria-live="polite" className={styles.echo}>
        {mark.kind === 'out' && <Sign kind="caution" />}{' '}
        {/* The error below says the same of a figure that was refused. */}
        {mark.kind === 'refused' && error ? '' : mark.words}
      </p>
    </Field>
  )
}
