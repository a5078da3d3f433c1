'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import type { StepId } from '@/lib/core/route/step-ids'
import { receiveOutsideSchema } from '@/lib/schemas/outside'
import { payerOptions } from '../_components/payer'
import { receiveOutsideAction } from '../actions'

type Head = { readonly visitId: string; readonly tag: string }
type Step = { readonly id: StepId; readonly label: string }
type Props = { orderId: string; scope: readonly Step[]; heads: readonly Head[] }

/**
 * Heads are back: which, what is seen to be done, what the vendor wrote on them. Nothing is ticked beforehand: what a
 * vendor was asked to do counts as done only when somebody here has looked.
 */
export function ReceiveForm({ orderId, scope, heads }: Props) {
  const blank = (visitId: string) => ({
    visitId,
    confirmed: [] as StepId[],
    seatsIn: true,
    marksTyped: '',
    marksRead: '',
    rejectedWhy: '',
    redoCost: '' as const,
  })
  const [back, setBack] = useState<readonly string[]>(heads.map((head) => head.visitId))
  const form = useActionForm(receiveOutsideSchema, receiveOutsideAction, {
    defaultValues: { orderId, heads: heads.map((head) => blank(head.visitId)) },
  })
  const { setValue, watch } = form.form
  const lines = watch('heads')

  function pick(ids: readonly string[]) {
    setBack(ids)
    setValue(
      'heads',
      ids.map((id) => lines.find((line) => line.visitId === id) ?? blank(id)),
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
        {lines.map((line, place) => {
          const tag = heads.find((head) => head.visitId === line.visitId)?.tag ?? ''
          return (
            <fieldset key={line.visitId} className="stack">
              <legend>{tag}</legend>
              <CheckList
                label="Work checked and done"
                hint="Tick only what you have checked. The rest can be confirmed later; until then it counts as not done."
                name={`confirmed-${line.visitId}`}
                values={[...line.confirmed]}
                onChange={(event) => setValue(`heads.${place}.confirmed`, toggled(line.confirmed, event.target))}
                options={scope.map((step) => ({ value: step.id, label: step.label }))}
              />
              <Check label="Seats installed" {...form.text(`heads.${place}.seatsIn`)} />
              <div className="columns">
                <TextInput
                  label="Vendor’s marks on the head"
                  hint="Exactly as written."
                  required={false}
                  {...form.text(`heads.${place}.marksTyped`)}
                />
                <TextInput label="Meaning of the marks" required={false} {...form.text(`heads.${place}.marksRead`)} />
              </div>
              <details>
                <summary>Not as ordered: reject {tag}</summary>
                <div className="columns">
                  <TextInput label="What is wrong" required={false} {...form.text(`heads.${place}.rejectedWhy`)} />
                  <Select
                    label="Cost of rework paid by"
                    empty="Not rejected"
                    options={payerOptions}
                    {...form.text(`heads.${place}.redoCost`)}
                  />
                </div>
              </details>
            </fieldset>
          )
        })}
      </ActionForm>
    </section>
  )
}
