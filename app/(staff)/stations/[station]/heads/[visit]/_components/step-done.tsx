'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { undoTickAction } from '../../../../actions'
import { StepConflict } from './step-conflict'

/** `settled`: the second of two slow taps on the tick must not take it back. */
type Props = { screen: StepScreen; settled: boolean }

/** A ticked step: who, when, what was read, and the way back. */
export function StepDone({ screen, settled }: Props) {
  const router = useRouter()
  const [reason, setReason] = useState('')
  const { run, repeat, pending, refusal, refusalRef, edited, clear } = useAction()
  const { step, ticked } = screen

  function takeBack() {
    const { stepId, occurrence, orderId } = step
    const key = { stepId, occurrence, orderId }
    run({ action: undoTickAction, input: { visitId: screen.visitId, step: key, seen: screen.seen, reason } })
  }

  function useTheirs() {
    clear()
    router.refresh()
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
      {refusal?.theirs ? (
        <StepConflict
          screen={screen}
          theirs={refusal.theirs}
          yours={<p>Take the tick back.</p>}
          pending={pending}
          onKeepMine={repeat}
          onUseTheirs={useTheirs}
        />
      ) : (
        refusal && <RefusalNotice refusal={refusal} title="Not taken back" ref={refusalRef} />
      )}
      {ticked && !ticked.free && (
        <TextInput
          label="Why is the tick taken back?"
          required
          value={reason}
          error={refusal?.fields?.reason}
          onChange={(event) => {
            edited('reason')
            setReason(event.target.value)
          }}
        />
      )}
      {ticked && (
        <div>
          <Button pending={pending} disabled={!settled} onClick={takeBack}>
            Take the tick back
          </Button>
        </div>
      )}
    </section>
  )
}
