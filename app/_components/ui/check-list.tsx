import { useId, type ComponentProps } from 'react'
import type { ChoiceOption } from './choice'
import { FieldGroup, type FieldWords } from './field'
import styles from './field.module.css'

type InputProps = Pick<ComponentProps<'input'>, 'ref' | 'onChange' | 'onBlur' | 'disabled'>

type Props = FieldWords &
  InputProps & {
    name: string
    options: readonly ChoiceOption[]
    /** With `onChange`: those chosen, held by the caller. */
    values?: readonly string[]
    defaultValues?: readonly string[]
  }

/** Any of several. Takes what `form.text(name)` gives; the form's value is a list, so its default must be `[]`. */
export function CheckList({ label, hint, error, required, name, options, values, defaultValues, ...input }: Props) {
  const id = useId()
  return (
    <FieldGroup id={id} label={label} hint={hint} error={error} required={required}>
      <div className={styles.checks}>
        {options.map((option) => (
          <label key={option.value} className={styles.choice}>
            <input
              {...input}
              type="checkbox"
              name={name}
              value={option.value}
              disabled={option.disabled || input.disabled}
              checked={values?.includes(option.value)}
              defaultChecked={defaultValues?.includes(option.value)}
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
