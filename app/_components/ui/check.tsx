import { useId, type ComponentProps } from 'react'
import { controlProps, FieldNotes, type FieldWords } from './field'
import styles from './field.module.css'

type Props = FieldWords & Omit<ComponentProps<'input'>, 'required' | 'type'>

/** One yes or no. The form's value is a boolean. */
export function Check({ label, hint, error, required, id, ...rest }: Props) {
  const ownId = useId()
  const at = id ?? ownId
  return (
    <div className={styles.field}>
      <label className={styles.choice}>
        <input {...rest} type="checkbox" {...controlProps(at, { hint, error, required })} />
        <span>{label}</span>
      </label>
      <FieldNotes id={at} hint={hint} error={error} />
    </div>
  )
}
