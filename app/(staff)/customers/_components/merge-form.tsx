'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Table } from '@/app/_components/ui/table'
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

const rows = [
  { key: 'name', label: 'Name' },
  { key: 'phone', label: 'Phone' },
  { key: 'email', label: 'E-mail' },
  { key: 'address', label: 'Address' },
  { key: 'jobs', label: 'Jobs' },
] as const

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
      <Table
        label="Both records"
        columns={[
          { id: 'what', label: '', head: true },
          { id: 'into', label: 'Stays' },
          { id: 'from', label: 'Ends' },
        ]}
        rows={rows.map(({ key, label }) => ({
          id: key,
          cells: { what: label, into: into[key] || 'none', from: from[key] || 'none' },
        }))}
      />
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
