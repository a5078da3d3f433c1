'use client'
import { useWatch } from 'react-hook-form'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { Choice } from '@/app/_components/ui/choice'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { correctReadingSchema } from '@/lib/schemas/visit'

type Input = z.input<typeof correctReadingSchema>

/** A reading as it is named and as it stands. */
export type ToCorrect = {
  readonly id: string
  readonly kind: ReadingKind
  readonly name: string
  readonly step: string
  readonly standing: string
}

type Props<Value> = {
  visitId: string
  reading: ToCorrect
  action: ServerAction<Input, Value>
  onDone: (value: NoInfer<Value>) => void
}

/** Another value in the place of the one that stands, or the reading withdrawn, with the reason. */
export function CorrectForm<Value>({ visitId, reading, action, onDone }: Props<Value>) {
  const form = useActionForm<Input, unknown, Value>(correctReadingSchema, action, {
    defaultValues: { visitId, readingId: reading.id, correction: 'replace', text: '', again: '', reason: '' },
    onDone,
  })
  const correction = useWatch({ control: form.form.control, name: 'correction' })
  return (
    <ActionForm form={form} submitLabel="Correct it">
      <p>
        {reading.name} at {reading.step.toLowerCase()} says <strong>{reading.standing}</strong>. It stays on record
        beside the correction.
      </p>
      <Choice
        label="What was wrong"
        options={[
          { value: 'replace', label: 'The value' },
          { value: 'withdraw', label: 'Wrong head: withdraw' },
        ]}
        {...form.text('correction')}
      />
      {correction === 'replace' && <Meant kind={reading.kind} form={form} />}
      {form.refusal?.code === 'unlikely' && (
        <TextInput label="Type it again to keep it" required={false} {...form.text('again')} />
      )}
      <TextArea label="Why" required rows={2} {...form.text('reason')} />
    </ActionForm>
  )
}

/** The value in the place of the old one: an answer of a list is picked from it. */
function Meant<Value>({ kind, form }: { kind: ReadingKind; form: Form<Input, Value> }) {
  const { choices } = readingSpecs[kind]
  const label = 'What it should say'
  if (!choices) return <TextInput label={label} required {...form.text('text')} />
  const options = choices.map(({ value, label: words }) => ({ value, label: words }))
  return <Choice label={label} options={options} {...form.text('text')} />
}
