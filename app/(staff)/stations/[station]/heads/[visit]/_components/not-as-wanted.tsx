'use client'
import { useState } from 'react'
import { payerOptions } from '@/app/(staff)/away/_components/payer'
import { rejectOutsideAction } from '@/app/(staff)/away/actions'
import { ActionForm } from '@/app/_components/form/action-form'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { StepId } from '@/lib/core/route/step-ids'
import { rejectOutsideSchema } from '@/lib/schemas/outside'
import { openHoldAction } from '../../../../actions'

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
          {asking && <ReworkForm visitId={visitId} orderId={orderId} words={words} onDone={close} />}
        </Dialog>
      )}
    </Notice>
  )
}

type ReworkProps = { visitId: string; orderId: string; words: string; onDone: () => void }

function ReworkForm({ visitId, orderId, words, onDone }: ReworkProps) {
  const form = useActionForm(rejectOutsideSchema, rejectOutsideAction, {
    defaultValues: { orderId, visitId, why: words.slice(0, 300) },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Reject">
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
  )
}
