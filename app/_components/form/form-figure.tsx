'use client'
import type { ComponentProps } from 'react'
import { useController, type FieldPath, type FieldValues } from 'react-hook-form'
import { FigureInput } from '../ui/figure-input'
import type { ActionForm } from './use-action-form'

type Props<Values extends FieldValues, Value> = Omit<
  ComponentProps<typeof FigureInput>,
  'value' | 'onText' | 'onBlur' | 'error' | 'name' | 'ref'
> & {
  form: ActionForm<Values, Value>
  name: FieldPath<Values>
}

/** A figure of a form. Its value is the text as typed. */
export function FormFigure<Values extends FieldValues, Value>({ form, name, ...rest }: Props<Values, Value>) {
  const { field, fieldState } = useController({ control: form.form.control, name })
  return (
    <FigureInput
      {...rest}
      ref={field.ref}
      name={field.name}
      value={String(field.value ?? '')}
      onText={field.onChange}
      onBlur={field.onBlur}
      error={fieldState.error?.message}
    />
  )
}
