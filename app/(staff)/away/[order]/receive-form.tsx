'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { toggled } from '@/app/_components/ui/toggled'
import type { StepId } from '@/lib/core/route/step-ids'
import { receiveOutsideSchema } from '@/lib/schemas/outside'
import { cameBlank, HeadThatCame } from '../_components/head-that-came'
import { receiveOutsideAction } from '../actions'

type Head = { readonly visitId: string; readonly tag: string }
type Step = { readonly id: StepId; readonly label: string }
type Props = { orderId: string; scope: readonly Step[]; heads: readonly Head[] }

/** Heads are back: which, and how each came. */
export function ReceiveForm({ orderId, scope, heads }: Props) {
  const [back, setBack] = useState<readonly string[]>(heads.map((head) => head.visitId))
  const form = useActionForm(receiveOutsideSchema, receiveOutsideAction, {
    defaultValues: { orderId, heads: heads.map((head) => cameBlank(head.visitId)) },
  })
  const { setValue, watch } = form.form
  const lines = watch('heads')

  function pick(ids: readonly string[]) {
    setBack(ids)
    setValue(
      'heads',
      ids.map((id) => lines.find((line) => line.visitId === id) ?? cameBlank(id)),
    )
  }

  return (
    <section className="stack part" aria-label="Receive">
      <h2>Receive heads</h2>
      <ActionForm form={form} submitLabel="Receive">
        <CheckList
          label="Heads received"
          name="back"
          values={[...back]}
          onChange={(event) => pick(toggled(back, event.target))}
          options={heads.map((head) => ({ value: head.visitId, label: head.tag }))}
        />
        {lines.map((line, place) => (
          <HeadThatCame
            key={line.visitId}
            form={form}
            place={place}
            tag={heads.find((head) => head.visitId === line.visitId)?.tag ?? ''}
            scope={scope}
          />
        ))}
      </ActionForm>
    </section>
  )
}
