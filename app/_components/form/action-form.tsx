'use client'
import type { ComponentProps, ReactNode } from 'react'
import type { FieldValues } from 'react-hook-form'
import { Busy } from '../ui/busy'
import { Button } from '../ui/button'
import { RefusalOrAsk } from './refusal-or-ask'
import styles from './action-form.module.css'
import { TakenOver } from './taken-over'
import type { ActionForm as Form } from './use-action-form'

type Props<Values extends FieldValues, Value> = Omit<ComponentProps<'form'>, 'form' | 'onSubmit' | 'action'> & {
  form: Form<Values, Value>
  /** What the main button says: the deed in words, "Book the job". */
  submitLabel: ReactNode
  /** More buttons beside it. */
  actions?: ReactNode
  /** What stands beside the main button; with it both stay in view at the foot of the screen. */
  foot?: ReactNode
  /** The page shows the refusal itself, where it is put right. */
  refusalElsewhere?: boolean
}

/** The fields, what was refused, the main button and its progress. */
export function ActionForm<Values extends FieldValues, Value>({
  form,
  submitLabel,
  actions,
  foot,
  refusalElsewhere = false,
  children,
  className = 'stack',
  ...rest
}: Props<Values, Value>) {
  return (
    <form {...rest} noValidate className={className} onSubmit={form.submit}>
      <TakenOver>
        {children}
        {form.refusal && !refusalElsewhere && (
          <RefusalOrAsk refusal={form.refusal} title="Not done" ref={form.refusalRef} onAgain={form.submit} />
        )}
        <div className={foot === undefined ? 'row' : styles.foot}>
          {foot}
          <Button type="submit" variant="main" pending={form.pending}>
            {submitLabel}
          </Button>
          {actions}
        </div>
      </TakenOver>
      <Busy when={form.pending} label="Sending…" />
    </form>
  )
}
