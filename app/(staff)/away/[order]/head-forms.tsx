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
        <p>All that this order asked for is owed again then. It can go out once more, or be done here.</p>
        <TextInput label="What is wrong with it" required {...form.text('why')} />
        <Select
          label="At whose cost it is put right"
          required
          empty="Say at whose cost"
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
        {step.label} of {tag} is not done after all
      </summary>
      <ActionForm form={form} submitLabel="Take the confirmation back">
        <TextInput label="Why it is taken back" required {...form.text('reason')} />
      </ActionForm>
    </details>
  )
}
