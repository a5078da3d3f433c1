import { useId, type ComponentProps, type ReactNode } from 'react'
import { FieldGroup, type FieldWords } from './field'
import styles from './field.module.css'

export type ChoiceOption = { value: string; label: ReactNode; hint?: ReactNode; disabled?: boolean }

type InputProps = Pick<ComponentProps<'input'>, 'ref' | 'onChange' | 'onBlur' | 'disabled'>

type Props = FieldWords &
  InputProps & {
    name: string
    options: readonly ChoiceOption[]
    /** With `onChange`: which one is chosen, held by the caller. */
    value?: string
    defaultValue?: string
  }

/** One of a few answers, each as large as a button. Takes what `form.text(name)` gives. */
export function Choice({ label, hint, error, required, name, options, value, defaultValue, ...input }: Props) {
  const id = useId()
  return (
    <FieldGroup id={id} role="radiogroup" label={label} hint={hint} error={error} required={required}>
      <div className={styles.choices}>
        {options.map((option) => (
          <label key={option.value} className={styles.choice}>
            <input
              {...input}
              type="radio"
              name={name}
              value={option.value}
              disabled={option.disabled || input.disabled}
              checked={value === undefined ? undefined : value === option.value}
              defaultChecked={defaultValue === undefined ? undefined : defaultValue === option.value}
            />
            <span>
              {option.label}
              {option.hint && <span className={styles.choiceHint}>{option.hint}</span>}
            </span>
          </label>
        ))}
      </div>
    </FieldGroup>
  )
}
