'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { makeCustomerLinkSchema } from '@/lib/schemas/release'
import { makeCustomerLinkAction } from './actions'
import { CopyText } from '@/app/_components/ui/copy-text'

type Props = { jobId: string; address: string }

/** Makes a link and shows it this once: it is not kept anywhere. */
export function MakeLink({ jobId, address }: Props) {
  const form = useActionForm(makeCustomerLinkSchema, makeCustomerLinkAction, {
    defaultValues: { jobId },
  })
  return (
    <ActionForm form={form} submitLabel={form.value ? 'Make another link' : 'Make a link'}>
      {form.value && (
        <Notice title="The link, shown only now">
          <p>
            <a href={form.value.path} target="_blank" rel="noreferrer">
              {address}
              {form.value.path}
            </a>
          </p>
          <CopyText text={`${address}${form.value.path}`} />
          <p>Copy it and send it to the customer. It cannot be shown again; a new one can be made.</p>
        </Notice>
      )}
    </ActionForm>
  )
}
