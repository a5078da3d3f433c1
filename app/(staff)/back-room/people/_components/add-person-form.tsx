'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { addPersonSchema } from '@/lib/schemas/person'
import { addPersonAction } from '../actions'
import { grantOptions, roleOptions } from './rights'

export function AddPersonForm() {
  const form = useActionForm(addPersonSchema, addPersonAction, {
    defaultValues: { name: '', signIn: '', roles: [], grants: [], password: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Add this person">
      <TextInput label="Name" hint="Name used in the shop" required {...form.text('name')} />
      <TextInput
        label="Sign-in name"
        hint="Short, without spaces"
        required
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        {...form.text('signIn')}
      />
      <CheckList label="Roles" required options={roleOptions} {...form.text('roles')} />
      <CheckList label="Deputy for the owner" required={false} options={grantOptions} {...form.text('grants')} />
      <p>They choose their own password, by a link that the next page makes.</p>
    </ActionForm>
  )
}
