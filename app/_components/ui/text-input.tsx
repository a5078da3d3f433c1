import { useId, type ComponentProps } from 'react'
import { Field, controlProps, type FieldWords } from './field'
import styles from './field.module.css'

type Props = FieldWords & Omit<ComponentProps<'input'>, 'required'>

/** A line of words. Takes what `form.text(name)` gives. */
export function TextInput({ label, hint, error, required, id, ...rest }: Props) {
  const ownId = useId()
  const at = id ?? ownId
  return (
    <Field id={at} label={label} hint={hint} error={error} required={required}>
      <input type="text" {...rest} {...controlProps(at, { hint, error, required })} className={styles.control} />
    </Field>
  )
}
