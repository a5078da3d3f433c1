'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { TextInput } from '@/app/_components/ui/text-input'
import { mergeCustomersSchema } from '@/lib/schemas/customer'
import { mergeCustomersAction } from '../actions'

type Side = {
  readonly id: string
  readonly version: number
  readonly jobs: number
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
}

/** Both records side by side: the one that stays, and the one that ends. */
export function MergeForm({ into, from }: { into: Side; from: Side }) {
  const form = useActionForm(mergeCustomersSchema, mergeCustomersAction, {
    defaultValues: {
      ...{ fromId: from.id, fromVersion: from.version, intoId: into.id, intoVersion: into.version },
      reason: '',
    },
  })
  return (
    <>
      <div className="columns">
        <Shown title="Stays" side={into} />
        <Shown title="Ends" side={from} />
      </div>
      <ActionForm
        form={form}
        submitLabel="Merge"
        actions={
          <ButtonLink href={`/customers/${from.id}/merge?with=${into.id}`} variant="quiet">
            The other way round
          </ButtonLink>
        }
      >
        <TextInput label="Reason" required hint="Same person, booked twice" {...form.text('reason')} />
      </ActionForm>
    </>
  )
}

function Shown({ title, side }: { title: string; side: Side }) {
  const lines = [
    { label: 'Phone', value: side.phone || 'none' },
    { label: 'E-mail', value: side.email || 'none' },
    { label: 'Address', value: side.address || 'none' },
    { label: 'Jobs', value: side.jobs },
  ]
  return (
    <section aria-label={title}>
      <h2>
        {title}: {side.name}
      </h2>
      <DefinitionList items={lines} />
    </section>
  )
}
