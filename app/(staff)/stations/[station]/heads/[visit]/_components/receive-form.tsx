'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { cameBlank, HeadThatCame } from '@/app/(staff)/away/_components/head-that-came'
import { receiveOutsideAction } from '@/app/(staff)/away/actions'
import { receiveOutsideSchema } from '@/lib/schemas/outside'
import type { ReceiveAtStep } from '@/lib/use-cases/stations/receive-at-step'

export type ReceiveProps = { receive: ReceiveAtStep; visitId: string; tag: string }

/** This head of the order, as on the order's own page. */
export function ReceiveForm({ receive: { orderId, scope }, visitId, tag }: ReceiveProps) {
  const form = useActionForm(receiveOutsideSchema, receiveOutsideAction, {
    defaultValues: { orderId, heads: [cameBlank(visitId)] },
  })
  return (
    <ActionForm form={form} submitLabel="Receive">
      <HeadThatCame form={form} place={0} tag={tag} scope={scope} folded />
    </ActionForm>
  )
}
