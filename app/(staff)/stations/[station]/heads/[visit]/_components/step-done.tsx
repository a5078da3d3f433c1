'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { useState, type MouseEvent, type ReactNode } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { StationLink } from '../../../../_app/station-link'
import { AnswersDone } from './later'
import { useCatchUp } from '../../../../_app/use-catch-up'
import { useDeeds } from '../../../../_app/use-deeds'
import { ScreenFrame } from './screen-frame'
import type { WhatNext } from './what-next'

const StepConflict = dynamic(() => untilHere(() => import('./step-conflict').then((file) => file.StepConflict)), {
  loading: nothingYet,
})

type Props = {
  screen: StepScreen
  /** The second of two slow taps on the tick must not take it back. */
  settled: boolean
  next: WhatNext
  notices: ReactNode
  above: ReactNode
  below: ReactNode
}

/** A ticked step: who, when, what was read, and the way back. */
export function StepDone({ screen, settled, next, notices, above, below }: Props) {
  const deeds = useDeeds()
  const catchUp = useCatchUp()
  const [reason, setReason] = useState('')
  const [asksWhy, setAsksWhy] = useState(false)
  const { run, repeat, pending, refusal, refusalRef, edited, clear } = useAction()
  const { step, ticked } = screen

  /** A tick that is no longer free to take back needs a reason: the first tap asks for it. */
  function takeBack() {
    if (ticked?.free === false && !asksWhy) return setAsksWhy(true)
    const { stepId, occurrence, orderId } = step
    const key = { stepId, occurrence, orderId }
    const words = `${screen.tag}: ${step.label}, taken back`
    run({
      action: deeds('undo-tick', words),
      input: { visitId: screen.visitId, step: key, seen: screen.seen, reason },
    })
  }

  function useTheirs() {
    clear()
    void catchUp()
  }

  return (
    <ScreenFrame label={step.label} withKeys={false} commit={<Ways next={next} isSettled={settled} />}>
      {notices}
      <div className="row spread">
        <p className="figure" role="status">
          {step.state === 'waived' ? 'Waived.' : 'Done.'}{' '}
          {ticked && (
            <>
              {ticked.by}, <When at={ticked.at} zone={screen.timeZone} locale={screen.locale} />
            </>
          )}
        </p>
        {ticked && (
          <Button pending={pending} disabled={!settled} onClick={takeBack}>
            Take back
          </Button>
        )}
      </div>
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
      {asksWhy && (
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
      <AnswersDone screen={screen} />
      {above}
      {below}
    </ScreenFrame>
  )
}

/** On to the next head of this station, to what is next on this one, or back to the queue. */
function Ways({ next, isSettled }: { next: WhatNext; isSettled: boolean }) {
  const { head, step, queueHref } = next
  // The tap that ticked the step must not lead away from it as well.
  const guard = (event: MouseEvent) => {
    if (!isSettled) event.preventDefault()
  }
  return (
    <>
      {head && (
        <StationLink href={head.href} variant="main" onClick={guard}>
          {head.words}
        </StationLink>
      )}
      {step && (
        <StationLink href={step.href} variant={head ? 'plain' : 'main'} onClick={guard}>
          {step.words}
        </StationLink>
      )}
      <StationLink href={queueHref} variant={head || step ? 'plain' : 'main'} onClick={guard}>
        Queue
      </StationLink>
    </>
  )
}
