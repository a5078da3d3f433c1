import { useId, type ComponentProps } from 'react'
import { Field, controlProps, type FieldWords } from './field'
import styles from './field.module.css'

export type Option = { value: string; label: string; disabled?: boolean }

type Props = FieldWords &
  Omit<ComponentProps<'select'>, 'required' | 'children'> & {
    options: readonly Option[]
    /** The empty first line, "Choose one"; left out: the first option is chosen. */
    empty?: string
  }

export function Select({ label, hint, error, required, id, options, empty, ...rest }: Props) {
  const ownId = useId()
  const at = id ?? ownId
  return (
    <Field id={at} label={label} hint={hint} error={error} required={required}>
      <select {...rest} {...controlProps(at, { hint, error, required })} className={styles.control}>
        {empty !== undefined && <option value="">{empty}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled}>
            {option.label}
          </option>
        ))}
      </select>
    </Field>
  )
}
