'use client'
import { useState, type ReactNode } from 'react'
import { get, useFormState, useWatch, type FieldPath } from 'react-hook-form'
import type { BookJobForm } from '@/lib/schemas/job'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'

type Props = {
  form: BookingActionForm
  title: ReactNode
  /** Fields inside it: a wrong one keeps it open. */
  within: readonly FieldPath<BookJobForm>[]
  /** What it holds, said while it is folded. */
  holds?: (values: BookJobForm) => string
  /** Inside another part: told smaller. */
  inner?: boolean
  children: ReactNode
}

/** A part of the form that a simple job does without. */
export function Fold({ form, title, within, holds, inner = false, children }: Props) {
  const { errors } = useFormState({ control: form.form.control })
  const [open, setOpen] = useState(false)
  const wrong = within.some((name) => get(errors, name) !== undefined)
  return (
    <details
      className={inner ? styles.inner : styles.fold}
      open={open || wrong}
      onToggle={({ currentTarget }) => {
        // React would not put back what the browser closed: to React it never was anything but open.
        if (wrong) currentTarget.open = true
        setOpen(currentTarget.open)
      }}
    >
      <summary>
        {title}
        {holds && !open && <Held form={form} holds={holds} />}
      </summary>
      <div className="stack">{children}</div>
    </details>
  )
}

function Held({ form, holds }: Required<Pick<Props, 'form' | 'holds'>>) {
  const held = holds(useWatch({ control: form.form.control }) as BookJobForm)
  return held === '' ? null : <span className={styles.held}>: {held}</span>
}
