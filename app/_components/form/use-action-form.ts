'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useCallback, useEffect, useRef, useState, useTransition, type RefObject } from 'react'
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
import { OperationIds } from './operation-ids'
import { callAction, type ServerAction } from './call-action'

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
  attempts: RefObject<OperationIds>
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
  const [pending, start] = useTransition()
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const [value, setValue] = useState<Value | null>(null)
  const refusalRef = useRef<HTMLDivElement>(null)
  const sending = useRef(false)
  const attempts = useRef(new OperationIds())
  const listeners = useRef(new Set<() => void>())

  useEffect(() => {
    if (refusal) refusalRef.current?.focus()
  }, [refusal])

  const whenDone = useCallback((listener: () => void) => {
    const all = listeners.current
    all.add(listener)
    return () => {
      all.delete(listener)
    }
  }, [])

  function finished() {
    attempts.current.answered()
    listeners.current.forEach((listener) => listener())
  }

  function show(refused: Refusal) {
    setRefusal(refused)
    for (const [name, message] of Object.entries(refused.fields ?? {})) {
      form.setError(name as Path<Values>, { type: 'server', message })
    }
  }

  async function send(input: Values) {
    const call = { op: attempts.current.idFor(input), input }
    const answer = await callAction(action, call, finished)
    if (!answer.answered) return show(answer.refusal)
    if (!answer.result.ok) {
      attempts.current.answered()
      return show(answer.result.refusal)
    }
    finished()
    setRefusal(null)
    setValue(answer.result.value)
    options.onDone?.(answer.result.value)
  }

  const submit = (event?: { preventDefault: () => void }) => {
    event?.preventDefault()
    if (sending.current) return
    sending.current = true
    start(async () => {
      try {
        await form.handleSubmit(send)()
      } finally {
        sending.current = false
      }
    })
  }

  const text = (name: Path<Values>) => ({
    ...form.register(name),
    error: form.getFieldState(name, form.formState).error?.message,
  })

  return { form, text, submit, pending, refusal, refusalRef, value, attempts, whenDone }
}
