'use client'
import type { ReactNode } from 'react'
import type { DefaultValues, FieldValues } from 'react-hook-form'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { ConflictResolver } from './conflict-resolver'

type Props<Values extends FieldValues, Parsed, Value> = {
  schema: z.ZodType<Parsed, Values>
  action: ServerAction<Values, Value>
  /** What the fields begin with, versions included. */
  values: DefaultValues<NoInfer<Values>>
  submitLabel: string
  fields: (form: Form<Values, Value>) => ReactNode
  /** Of an entry that others may change meanwhile: its name, what its fields are called, who changed it last. */
  kept?: { what: string; labelOf: (path: string) => string; by: string }
  className?: string
}

/** Adds an entry to a list of the Back room, or changes one. */
export function EntryForm<Values extends FieldValues, Parsed, Value>(props: Props<Values, Parsed, Value>) {
  const { schema, action, values, submitLabel, fields, kept, className } = props
  const form = useActionForm(schema, action, { defaultValues: values })
  return (
    <ActionForm form={form} submitLabel={submitLabel} className={className}>
      {fields(form)}
      {kept && <ConflictResolver form={form} fresh={values} {...kept} />}
    </ActionForm>
  )
}
