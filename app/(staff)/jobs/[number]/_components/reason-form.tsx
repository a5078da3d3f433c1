'use client'
import type { ReactNode } from 'react'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'

type Input = { reason: string }

type Props<Values extends Input> = {
  submitLabel: string
  schema: z.ZodType<unknown, Values>
  action: ServerAction<Values, unknown>
  input: Omit<Values, 'reason'>
  onDone: () => void
  /** What follows from it. */
  children: ReactNode
}

/** A deed that needs a reason and nothing else. */
export function ReasonForm<Values extends Input>(props: Props<Values>) {
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
