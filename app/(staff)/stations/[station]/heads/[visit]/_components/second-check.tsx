'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { When } from '@/app/_components/ui/when'
import type { StepKey } from '@/lib/core/route/step-ids'
import { secondCheckSchema } from '@/lib/schemas/visit'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { secondCheckAction } from '../../../../actions'

type Props = { screen: StepScreen; step: StepKey }
type Needed = Extract<NonNullable<StepScreen['secondCheck']>, { state: 'needed' }>

/** Before a deep cut: another person reads one chamber and confirms plan and head; after it, who did. */
export function SecondCheck({ screen, step }: Props) {
  const { secondCheck: check } = screen
  if (check === null) return null
  if (check.state === 'done') {
    return (
      <p>
        Second check: {check.by} {check.read === '' ? '' : `read ${check.read}, `}confirmed plan and head,{' '}
        <When at={check.at} zone={screen.timeZone} locale={screen.locale} />.
      </p>
    )
  }
  return (
    <Notice kind="caution" title="Second check" live={false}>
      {screen.plan.pass === null && <p>{check.words}</p>}
      {check.takenBy !== '' && check.cannot === '' && <p>{check.takenBy} took this head.</p>}
      {check.cannot === '' ? <CheckForm screen={screen} step={step} check={check} /> : <p>{check.cannot}</p>}
    </Notice>
  )
}

function CheckForm({ screen, step, check }: Props & { check: Needed }) {
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
