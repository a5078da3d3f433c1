'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useCallback, useEffect, useRef, useState, type RefObject } from 'react'
import {
  useForm,
  type DefaultValues,
  type FieldValues,
  type Path,
  type UseFormRegisterReturn,
  type UseFormReturn,
} from 'react-hook-form'
import type { z } from 'zod'
import type { Refusal } from '@/lib/core/errors'
import type { ServerAction } from './call-action'
import type { OperationIds } from './operation-ids'
import { useAction } from './use-action'

export type ActionForm<Values extends FieldValues, Value = unknown> = {
  /** All of react-hook-form, for what is not covered here. */
  form: UseFormReturn<Values>
  /** Props for TextInput, TextArea, Select, Choice, Check, CheckList: name, handlers and the error. */
  text: (name: Path<Values>) => UseFormRegisterReturn & { error: string | undefined }
  /** For <form onSubmit>. */
  submit: (event?: { preventDefault: () => void }) => void
  pending: boolean
  /** Why the last attempt was refused or not sent; null: it was not. */
  refusal: Refusal | null
  /** The notice that shows it, so that focus can go there. */
  refusalRef: RefObject<HTMLDivElement | null>
  /** What the action gave back; null until it has. */
  value: Value | null
  /** Takes the refusal off the page. */
  clear: () => void
  ids: RefObject<OperationIds>
  /** Called once the server has taken it. Gives back how to stop listening. */
  whenDone: (listener: () => void) => () => void
}

/**
 * A form that is checked here by the schema the action checks with, sent once, and never loses what was typed. The input
 * goes out as typed: the action parses it itself.
 */
export function useActionForm<Values extends FieldValues, Parsed, Value>(
  schema: z.ZodType<Parsed, Values>,
  action: ServerAction<Values, Value>,
  options: { defaultValues: DefaultValues<NoInfer<Values>>; onDone?: (value: NoInfer<Value>) => void },
): ActionForm<Values, Value> {
  const form = useForm<Values>({
    resolver: zodResolver(schema, undefined, { raw: true }),
    defaultValues: options.defaultValues,
    mode: 'onTouched',
  })
  const { run, pending, refusal, refusalRef, ids, clear, edited } = useAction()
  const [value, setValue] = useState<Value | null>(null)
  const listeners = useRef(new Set<() => void>())

  const { subscribe } = form
  useEffect(
    () => subscribe({ formState: { values: true }, callback: ({ name }) => name !== undefined && edited(name) }),
    [subscribe, edited],
  )

  const whenDone = useCallback((listener: () => void) => {
    const all = listeners.current
    all.add(listener)
    return () => {
      all.delete(listener)
    }
  }, [])

  function showFields({ fields, alike }: Refusal) {
    // "Is it …?" is asked and answered beside the fields: what was typed is not wrong.
    if (alike) return
    for (const [name, message] of Object.entries(fields ?? {})) {
      form.setError(name as Path<Values>, { type: 'server', message })
    }
  }

  const send = (input: Values) =>
    run({
      action,
      input,
      onDone: (answer) => {
        setValue(answer)
        options.onDone?.(answer)
      },
      onTaken: () => listeners.current.forEach((listener) => listener()),
      onRefused: showFields,
    })

  const submit = (event?: { preventDefault: () => void }) => {
    event?.preventDefault()
    clear()
    void form.handleSubmit(send)()
  }

  const text = (name: Path<Values>) => ({
    ...form.register(name),
    error: form.getFieldState(name, form.formState).error?.message,
  })

  return { form, text, submit, pending, refusal, refusalRef, value, clear, ids, whenDone }
}
