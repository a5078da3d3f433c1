'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { useState } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { Notice } from '@/app/_components/ui/notice'
import type { StepId } from '@/lib/core/route/step-ids'
import { openHoldAction } from '../../../../actions'

const RejectForm = dynamic(
  () => untilHere(() => import('@/app/(staff)/away/_components/reject-form').then((file) => file.RejectForm)),
  {
    loading: nothingYet,
  },
)

type Props = {
  visitId: string
  stepId: StepId
  /** What is out, in words. */
  words: string
  /** The order that brought it; null: it was cut here. */
  orderId: string | null
}

/** A cut that is out of tolerance: the hold, or the rework by whoever cut it, with what is wrong filled in. */
export function NotAsWanted({ visitId, stepId, words, orderId }: Props) {
  const [asking, setAsking] = useState(false)
  const { run, pending, refusal, refusalRef } = useAction()
  const close = () => setAsking(false)
  return (
    <Notice kind="caution" title="Not as wanted" live={false}>
      <p>{words}</p>
      <p>Gauge it again. If it is still wrong:</p>
      <div className="row">
        <Button
          variant="stop"
          pending={pending}
          onClick={() => run({ action: openHoldAction, input: { visitId, stepId, reason: words } })}
        >
          Put it on hold for this
        </Button>
        {orderId !== null && <Button onClick={() => setAsking(true)}>Reject it for rework</Button>}
      </div>
      {refusal && <RefusalNotice refusal={refusal} title="Not on hold" ref={refusalRef} />}
      {orderId !== null && (
        <Dialog open={asking} onClose={close} title="Reject it for rework">
          {asking && (
            <RejectForm
              orderId={orderId}
              visitId={visitId}
              why={words.slice(0, 300)}
              submitLabel="Reject"
              onDone={close}
            />
          )}
        </Dialog>
      )}
    </Notice>
  )
}
