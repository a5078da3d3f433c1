import { useId, type ComponentProps } from 'react'
import { Field, controlProps, type FieldWords } from './field'
import styles from './field.module.css'

type Props = FieldWords & Omit<ComponentProps<'textarea'>, 'required'>

/** Several lines of words. */
export function TextArea({ label, hint, error, required, id, ...rest }: Props) {
  const ownId = useId()
  const at = id ?? ownId
  return (
    <Field id={at} label={label} hint={hint} error={error} required={required}>
      <textarea rows={3} {...rest} {...controlProps(at, { hint, error, required })} className={styles.control} />
    </Field>
  )
}
