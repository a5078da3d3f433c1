import type { ComponentProps } from 'react'
import { TextInput } from '@/app/_components/ui/text-input'

type Field = Partial<ComponentProps<typeof TextInput>>
type Props = { label: string; more: string; first: Field; again: Field }

/** A password that is chosen, and typed once more. `more`: said after how long it should be. */
export const NewPassword = ({ label, more, first, again }: Props) => (
  <>
    <TextInput
      label={label}
      hint={`At least 8 characters; 15 or more are better. ${more}`}
      required
      type="password"
      autoComplete="new-password"
      {...first}
    />
    <TextInput label={`${label} again`} required type="password" autoComplete="new-password" {...again} />
  </>
)
