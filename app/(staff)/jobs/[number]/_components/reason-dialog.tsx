'use client'
import { useState, type ReactNode } from 'react'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextInput } from '@/app/_components/ui/text-input'

type Input = { reason: string }

type Props<Values extends Input> = {
  /** On the button that opens it, and its title. */
  title: string
  /** For a screen reader: what it is done to. */
  of?: string
  submitLabel: string
  schema: z.ZodType<unknown, Values>
  action: ServerAction<Values, unknown>
  input: Omit<Values, 'reason'>
  /** What follows from it. */
  children: ReactNode
}

/** A deed that needs a reason and nothing else. */
export function ReasonDialog<Values extends Input>(props: Props<Values>) {
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  return (
    <>
      <Button variant="quiet" onClick={() => setOpen(true)}>
        {props.title}
        {props.of && <span className="visually-hidden"> {props.of}</span>}
      </Button>
      <Dialog open={open} onClose={close} title={props.title} closeLabel="Close">
        <ReasonForm {...props} onDone={close} />
      </Dialog>
    </>
  )
}

function ReasonForm<Values extends Input>(props: Props<Values> & { onDone: () => void }) {
  const form = useActionForm<Input, unknown, unknown>(
    props.schema as unknown as z.ZodType<unknown, Input>,
    props.action as unknown as ServerAction<Input, unknown>,
    { defaultValues: { ...props.input, reason: '' }, onDone: props.onDone },
  )
  return (
    <ActionForm form={form} submitLabel={props.submitLabel}>
      <p>{props.children}</p>
      <TextInput label="Reason" required {...form.text('reason')} />
    </ActionForm>
  )
}
