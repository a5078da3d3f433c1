'use client'
import { useRouter } from 'next/navigation'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { repromiseSchema } from '@/lib/schemas/outside'
import { repromiseAction } from '../actions'

/** The vendor gave another day; every promise stays on record. */
export function RepromiseForm({ orderId, version }: { orderId: string; version: number }) {
  const router = useRouter()
  const form = useActionForm(repromiseSchema, repromiseAction, {
    defaultValues: { orderId, version, promisedOn: '', note: '' },
    onDone: () => router.refresh(),
  })
  return (
    <details>
      <summary>The vendor gave another day</summary>
      <ActionForm form={form} submitLabel="Note the new day">
        <TextInput label="Promised back on" type="date" required {...form.text('promisedOn')} />
        <TextInput label="What they said" required={false} {...form.text('note')} />
      </ActionForm>
    </details>
  )
}
