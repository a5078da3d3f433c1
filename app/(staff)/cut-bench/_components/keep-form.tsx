'use client'
import { useEffect } from 'react'
import type { Chosen } from '@/app/_components/bench/bench-answer'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { keepEstimateSchema } from '@/lib/schemas/bench'
import type { BenchForm } from '@/lib/schemas/bench-question'
import { keepEstimateAction } from '../actions'

type Props = { chosen: Chosen; typed: BenchForm; forWhom: string }

/** Keeps the answer under the customer's name. */
export function KeepForm({ chosen, typed, forWhom }: Props) {
  const form = useActionForm(keepEstimateSchema, keepEstimateAction, {
    defaultValues: { question: typed, wayId: chosen.way.id, angleIn: chosen.angleIn, forWhom, note: '' },
  })
  // What is sent is what is on the screen now, not what was when the form opened.
  const { setValue } = form.form
  useEffect(() => {
    setValue('question', typed)
    setValue('angleIn', chosen.angleIn)
  }, [setValue, typed, chosen.angleIn])
  return (
    <ActionForm form={form} submitLabel="Save answer">
      <TextInput label="Customer" required {...form.text('forWhom')} />
      <TextInput label="Note" {...form.text('note')} />
    </ActionForm>
  )
}
