'use client'
import { EntryForm } from '../../_components/entry-form'
import { CheckList } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { addPersonSchema } from '@/lib/schemas/person'
import { addPersonAction } from '../actions'
import { grantOptions, roleOptions } from './rights'

export const AddPersonForm = () => (
  <EntryForm
    schema={addPersonSchema}
    action={addPersonAction}
    values={{ name: '', signIn: '', roles: [], grants: [], password: '' }}
    submitLabel="Add this person"
    fields={({ text }) => (
      <>
        <TextInput label="Name" hint="Name used in the shop" required {...text('name')} />
        <TextInput
          label="Sign-in name"
          hint="Short, without spaces"
          required
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          {...text('signIn')}
        />
        <CheckList label="Roles" required options={roleOptions} {...text('roles')} />
        <CheckList label="Deputy for the owner" required={false} options={grantOptions} {...text('grants')} />
        <p>They choose their own password, by a link that the next page makes.</p>
      </>
    )}
  />
)
