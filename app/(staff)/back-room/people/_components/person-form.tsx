'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { changePersonSchema } from '@/lib/schemas/person'
import type { PersonSeen } from '@/lib/use-cases/people/see-people'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { changePersonAction } from '../actions'
import { grantOptions, labelOf, roleOptions } from './rights'

export function PersonForm({ person, by }: { person: PersonSeen; by: string }) {
  const fresh = {
    personId: person.id,
    version: person.version,
    name: person.name,
    roles: [...person.roles],
    grants: [...person.grants],
  }
  const form = useActionForm(changePersonSchema, changePersonAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Save name and rights">
      <TextInput label="Name" required {...form.text('name')} />
      <CheckList
        label="Roles"
        hint="Changing rights signs them out."
        required
        options={roleOptions}
        {...form.text('roles')}
      />
      <CheckList label="Deputy for the owner" required={false} options={grantOptions} {...form.text('grants')} />
      <ConflictResolver form={form} fresh={fresh} what={person.name} labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
