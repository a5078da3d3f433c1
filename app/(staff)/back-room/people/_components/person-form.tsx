'use client'
import { CheckList } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { changePersonSchema } from '@/lib/schemas/person'
import type { PersonSeen } from '@/lib/use-cases/people/see-people'
import { EntryForm } from '../../_components/entry-form'
import { changePersonAction } from '../actions'
import { grantOptions, labelOf, roleOptions } from './rights'

export function PersonForm({ person, by }: { person: PersonSeen; by: string }) {
  const { id: personId, version, name, roles, grants } = person
  return (
    <EntryForm
      schema={changePersonSchema}
      action={changePersonAction}
      values={{ personId, version, name, roles: [...roles], grants: [...grants] }}
      submitLabel="Save name and rights"
      fields={({ text }) => (
        <>
          <TextInput label="Name" required {...text('name')} />
          <CheckList
            label="Roles"
            hint="Changing rights signs them out."
            required
            options={roleOptions}
            {...text('roles')}
          />
          <CheckList label="Deputy for the owner" required={false} options={grantOptions} {...text('grants')} />
        </>
      )}
      kept={{ what: name, labelOf, by }}
    />
  )
}
