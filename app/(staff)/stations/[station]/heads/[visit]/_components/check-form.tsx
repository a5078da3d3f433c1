'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { Select } from '@/app/_components/ui/select'
import type { StepKey } from '@/lib/core/route/step-ids'
import { secondCheckSchema } from '@/lib/schemas/visit'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { secondCheckAction } from '../../../../actions'

type Needed = Extract<NonNullable<StepScreen['secondCheck']>, { state: 'needed' }>
type Props = { screen: StepScreen; step: StepKey; check: Needed }

/** What the second person reads and confirms. */
export function CheckForm({ screen, step, check }: Props) {
  const { stepId, occurrence, orderId } = step
  const form = useActionForm(secondCheckSchema, secondCheckAction, {
    defaultValues: {
      visitId: screen.visitId,
      step: { stepId, occurrence, orderId },
      seen: screen.seen,
      text: '',
      chamber: '',
      instrumentId: null,
    },
  })
  return (
    <ActionForm form={form} submitLabel="Confirm the second check">
      <p>Only the person who is signed in, and who does not make this cut.</p>
      {check.chambers.length > 0 && (
        <>
          <Select
            label="Chamber read"
            required
            empty="Choose the chamber"
            options={check.chambers.map((chamber) => ({ value: chamber, label: `Chamber ${chamber}` }))}
            {...form.text('chamber')}
          />
          <FormFigure form={form} name="text" label="It holds" quantity="chamberVolume" required />
        </>
      )}
      <Check label={`The plan above is the plan of ${screen.tag}`} required {...form.text('planConfirmed')} />
      <Check
        label={`This is ${screen.tag}: tag and stamp on the head were looked at`}
        required
        {...form.text('headConfirmed')}
      />
    </ActionForm>
  )
}
