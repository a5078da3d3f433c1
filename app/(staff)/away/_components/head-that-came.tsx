'use client'
import type { z } from 'zod'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import type { StepId } from '@/lib/core/route/step-ids'
import type { receiveOutsideSchema } from '@/lib/schemas/outside'
import { payerOptions } from './payer'

export type ReceiveForm = ActionForm<z.input<typeof receiveOutsideSchema>>

/** Nothing is ticked beforehand: what a vendor was asked to do counts as done only when somebody here has looked. */
export const cameBlank = (visitId: string) => ({
  visitId,
  confirmed: [] as StepId[],
  seatsIn: true,
  marksTyped: '',
  marksRead: '',
  rejectedWhy: '',
  redoCost: '' as const,
})

type Props = {
  form: ReceiveForm
  /** Its place among the heads of the form. */
  place: number
  tag: string
  scope: readonly { readonly id: StepId; readonly label: string }[]
  /** Only what the vendor did stands open: at a bench the button has to be in view. */
  folded?: boolean
}

/** How one head came back: what is seen to be done, what the vendor wrote on it, what is wrong. */
export function HeadThatCame({ form, place, tag, scope, folded = false }: Props) {
  const { setValue, watch } = form.form
  const line = watch(`heads.${place}`)
  const work = (
    <CheckList
      label="Work checked and done"
      hint="Tick only what you have checked. The rest can be confirmed later; until then it counts as not done."
      name={`confirmed-${line.visitId}`}
      values={[...line.confirmed]}
      onChange={(event) => setValue(`heads.${place}.confirmed`, toggled(line.confirmed, event.target))}
      options={scope.map((step) => ({ value: step.id, label: step.label }))}
    />
  )
  const marks = (
    <>
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
    </>
  )
  const reject = (
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
  )
  return folded ? (
    <>
      {work}
      <details>
        <summary>Vendor’s marks, seats</summary>
        {marks}
      </details>
      {reject}
    </>
  ) : (
    <fieldset className="stack">
      <legend>{tag}</legend>
      {work}
      {marks}
      {reject}
    </fieldset>
  )
}
