import type { ReactNode } from 'react'
import styles from './field.module.css'
import { Sign } from './sign'

export type FieldWords = {
  label: ReactNode
  /** One line that helps to answer, always visible. */
  hint?: ReactNode
  /** What is wrong and what to do about it. */
  error?: string
  /** true: marked "required"; false: marked "optional"; left out: unmarked. */
  required?: boolean
}

export type ControlProps = {
  id: string
  required: boolean | undefined
  'aria-describedby': string | undefined
  'aria-invalid': true | undefined
}

/** Ids and links between a control and the words around it. */
export function controlProps(id: string, { hint, error, required }: Omit<FieldWords, 'label'>, more?: string) {
  const described = [hint ? `${id}-hint` : '', more ?? '', error ? `${id}-error` : ''].filter(Boolean)
  const props: ControlProps = {
    id,
    required: required === true ? true : undefined,
    'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
    'aria-invalid': error ? true : undefined,
  }
  return props
}

/** Label above, control, hint and error below. Give the control `controlProps(id, words)`. */
export function Field({
  id,
  label,
  hint,
  error,
  required,
  children,
}: FieldWords & { id: string; children: ReactNode }) {
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
        <Mark required={required} />
      </label>
      {children}
      <FieldNotes id={id} hint={hint} error={error} />
    </div>
  )
}

/** The same for several controls under one question. */
export function FieldGroup({
  id,
  label,
  hint,
  error,
  required,
  role,
  children,
}: FieldWords & { id: string; role?: 'radiogroup'; children: ReactNode }) {
  const { 'aria-describedby': describedBy } = controlProps(id, { hint, error })
  return (
    <fieldset
      id={id}
      className={styles.group}
      role={role}
      aria-required={role && required ? true : undefined}
      aria-invalid={role && error ? true : undefined}
      aria-describedby={describedBy}
    >
      <legend className={styles.legend}>
        {label}
        <Mark required={required} />
      </legend>
      {children}
      <FieldNotes id={id} hint={hint} error={error} />
    </fieldset>
  )
}

function Mark({ required }: { required: boolean | undefined }) {
  if (required === undefined) return null
  // A control that is required already says so itself.
  return (
    <span aria-hidden={required} className={styles.mark}>
      {required ? ' required' : ' optional'}
    </span>
  )
}

export function FieldNotes({ id, hint, error }: { id: string; hint?: ReactNode; error?: string }) {
  return (
    <>
      {hint && (
        <div id={`${id}-hint`} className={styles.hint}>
          {hint}
        </div>
      )}
      {error && (
        <p id={`${id}-error`} className={styles.error}>
          <Sign kind="stop" /> {error}
        </p>
      )}
    </>
  )
}
