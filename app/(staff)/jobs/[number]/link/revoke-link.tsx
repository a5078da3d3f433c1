'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { revokeCustomerLinkSchema } from '@/lib/schemas/release'
import { revokeCustomerLinkAction } from './actions'

export function RevokeLink({ linkId, madeAt }: { linkId: string; madeAt: string }) {
  const form = useActionForm(revokeCustomerLinkSchema, revokeCustomerLinkAction, {
    defaultValues: { linkId },
  })
  return (
    <ActionForm
      form={form}
      aria-label={`Link of ${madeAt}`}
      submitLabel={
        <>
          Revoke<span className="visually-hidden"> the link of {madeAt}</span>
        </>
      }
    />
  )
}
