'use client'
import { useRouter } from 'next/navigation'
import { useRef, useState, useTransition } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction } from '@/app/_components/form/call-action'
import { Button } from '@/app/_components/ui/button'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { undoTickAction } from '../../../../actions'

/** A ticked step: who, when, what was read, and the way back. */
export function StepDone({ screen }: { screen: StepScreen }) {
  const router = useRouter()
  const [reason, setReason] = useState('')
  const [said, setSaid] = useState('')
  const [pending, start] = useTransition()
  const attempts = useRef(new OperationIds())
  const { step, ticked } = screen

  function takeBack() {
    const input = {
      visitId: screen.visitId,
      step: { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId },
      seen: screen.seen,
      reason,
    }
    start(async () => {
      const answer = await callAction(undoTickAction, { op: attempts.current.idFor(input), input })
      if (!answer.answered) return setSaid(answer.refusal.message)
      attempts.current.answered()
      if (!answer.result.ok) return setSaid(answer.result.refusal.message)
      router.refresh()
    })
  }

  return (
    <section aria-label={step.label} className="stack">
      <p className="figure" role="status">
        {step.state === 'waived' ? 'Waived.' : 'Done.'}{' '}
        {ticked && (
          <>
            {ticked.by}, <When at={ticked.at} zone={screen.timeZone} locale={screen.locale} />
          </>
        )}
      </p>
      <DefinitionList
        items={screen.fields
          .filter((field) => field.answer !== null)
          .map((field) => ({
            label: `${field.spec.label} ${field.pointLabel}`,
            value: field.notTaken === null ? field.answer : `not taken: ${field.notTaken}`,
          }))}
      />
      {said !== '' && (
        <Notice kind="stop" title="Not taken back">
          <p>{said}</p>
        </Notice>
      )}
      {ticked && !ticked.free && (
        <TextInput
          label="Why is the tick taken back?"
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
      )}
      {ticked && (
        <div>
          <Button pending={pending} onClick={takeBack}>
            Take the tick back
          </Button>
        </div>
      )}
    </section>
  )
}
