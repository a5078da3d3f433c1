'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { StepId } from '@/lib/core/route/step-ids'
import { confirmOutsideSchema, rejectOutsideSchema } from '@/lib/schemas/outside'
import { payerOptions } from '../_components/payer'
import { confirmOutsideAction, rejectOutsideAction } from '../actions'

type Head = { readonly orderId: string; readonly visitId: string; readonly tag: string }

/** What came back is not taken as it is: its work is owed again. */
export function RejectForm({ orderId, visitId, tag }: Head) {
  const form = useActionForm(rejectOutsideSchema, rejectOutsideAction, {
    defaultValues: { orderId, visitId, why: '' },
  })
  return (
    <details>
      <summary>Reject {tag}</summary>
      <ActionForm form={form} submitLabel={`Reject ${tag}`}>
        <p>All work of this order is then needed again. Send the head out again or do the work here.</p>
        <TextInput label="What is wrong" required {...form.text('why')} />
        <Select
          label="Cost of rework paid by"
          required
          empty="Choose who pays"
          options={payerOptions}
          {...form.text('redoCost')}
        />
      </ActionForm>
    </details>
  )
}

/** An earlier confirmation turned out to be wrong: the step is ours again, with the reason on record. */
export function TakeBackForm({
  orderId,
  visitId,
  tag,
  step,
}: Head & { step: { readonly id: StepId; readonly label: string } }) {
  const form = useActionForm(confirmOutsideSchema, confirmOutsideAction, {
    defaultValues: { orderId, visitId, stepId: step.id, confirmed: false, reason: '' },
  })
  return (
    <details>
      <summary>
        {step.label} of {tag}: not done
      </summary>
      <ActionForm form={form} submitLabel="Withdraw the confirmation">
        <TextInput label="Reason" required {...form.text('reason')} />
      </ActionForm>
    </details>
  )
}
