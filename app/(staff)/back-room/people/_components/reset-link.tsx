'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CopyText } from '@/app/_components/ui/copy-text'
import { Notice } from '@/app/_components/ui/notice'
import { ofPersonSchema } from '@/lib/schemas/person'
import { makeResetLinkAction } from '../actions'

/** A link by which a person chooses a new password, shown this once. */
export function ResetLink({ personId }: { personId: string }) {
  const form = useActionForm(ofPersonSchema, makeResetLinkAction, { defaultValues: { personId } })
  return (
    <ActionForm form={form} submitLabel={form.value ? 'Make another link' : 'Make a link to choose a password'}>
      <p>
        Whoever opens the link chooses a password for this person; you do not see it. It works once, for a day. The old
        password works until then.
      </p>
      {form.value && (
        <Notice title="The link, shown only now">
          <p style={{ overflowWrap: 'anywhere' }}>{form.value.address}</p>
          <CopyText text={form.value.address} />
          <p>Hand it to this person and to nobody else.</p>
        </Notice>
      )}
    </ActionForm>
  )
}
