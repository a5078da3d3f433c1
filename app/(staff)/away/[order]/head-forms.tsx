'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import type { StepId } from '@/lib/core/route/step-ids'
import { confirmOutsideSchema } from '@/lib/schemas/outside'
import { RejectForm } from '../_components/reject-form'
import { confirmOutsideAction } from '../actions'

type Head = { readonly orderId: string; readonly visitId: string; readonly tag: string }

/** What came back is not taken as it is: its work is owed again. */
export function RejectHead({ orderId, visitId, tag }: Head) {
  return (
    <details>
      <summary>Reject {tag}</summary>
      <RejectForm orderId={orderId} visitId={visitId} submitLabel={`Reject ${tag}`} />
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
