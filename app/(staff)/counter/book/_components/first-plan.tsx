'use client'
import { useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'

/** The cut that was chosen at the bench: it becomes the first plan, which the customer has still to accept. */
export function FirstPlan({ form }: { form: BookingActionForm }) {
  const plan = useWatch({ control: form.form.control, name: 'firstPlan' })
  if (!plan) return null
  return (
    <div className={styles.chosen}>
      <span>
        First plan: <strong>{plan.words}</strong>. The customer has not accepted it yet.
      </span>
      <Button variant="quiet" onClick={() => form.form.setValue('firstPlan', null, { shouldDirty: true })}>
        Book without it
      </Button>
    </div>
  )
}
