import { useId, type ComponentProps, type ReactNode } from 'react'
import { FieldGroup, type FieldWords } from './field'
import styles from './field.module.css'

export type ChoiceOption = { value: string; label: ReactNode; hint?: ReactNode; disabled?: boolean }

type InputProps = Pick<ComponentProps<'input'>, 'ref' | 'onChange' | 'onBlur' | 'disabled'>
type Common = FieldWords & InputProps & { name: string; options: readonly ChoiceOption[] }

type Props = Common & {
  /** With `onChange`: which one is chosen, held by the caller. */
  value?: string
  defaultValue?: string
}

/** One of a few answers, each as large as a button. Takes what `form.text(name)` gives. */
export const Choice = ({ value, defaultValue, ...common }: Props) => (
  <Options
    {...common}
    type="radio"
    values={value === undefined ? undefined : [value]}
    defaultValues={defaultValue === undefined ? undefined : [defaultValue]}
  />
)

type Several = {
  /** With `onChange`: those chosen, held by the caller. */
  values?: readonly string[]
  defaultValues?: readonly string[]
}

/** Any of several. Takes what `form.text(name)` gives; the form's value is a list, so its default must be `[]`. */
export const CheckList = (props: Common & Several) => <Options {...props} type="checkbox" />

function Options(props: Common & Several & { type: 'radio' | 'checkbox' }) {
  const { label, hint, error, required, name, options, type, values, defaultValues, ...input } = props
  const id = useId()
  const isRadio = type === 'radio'
  return (
    <FieldGroup
      id={id}
      role={isRadio ? 'radiogroup' : undefined}
      label={label}
      hint={hint}
      error={error}
      required={required}
    >
      <div className={isRadio ? styles.choices : styles.checks}>
        {options.map((option) => (
          <label key={option.value} className={styles.choice}>
            <input
              {...input}
              type={type}
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
