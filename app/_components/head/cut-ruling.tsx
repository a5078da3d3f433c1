'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextArea } from '@/app/_components/ui/text-area'
import type { Ruling } from '@/lib/core/rate/screen'
import { ruleOnCutSchema, type RuleOnCut } from '@/lib/schemas/casting'

type Props = {
  visitId: string
  /** What stands now; null: the owner has decided nothing. */
  ruling: Ruling | null
  action: ServerAction<RuleOnCut, unknown>
}

/** The owner's word on a cut: count it behind the rate, or leave it out, with the reason. */
export function CutRuling({ visitId, ruling, action }: Props) {
  const [asked, setAsked] = useState<Ruling | null>(null)
  return (
    <div className="row">
      {ruling !== 'count' && <Button onClick={() => setAsked('count')}>Count this cut</Button>}
      {ruling !== 'leave-out' && <Button onClick={() => setAsked('leave-out')}>Leave this cut out</Button>}
      <Dialog
        open={asked !== null}
        onClose={() => setAsked(null)}
        title={asked === 'count' ? 'Count this cut' : 'Leave this cut out'}
      >
        {asked && <Reason visitId={visitId} ruling={asked} action={action} onDone={() => setAsked(null)} />}
      </Dialog>
    </div>
  )
}

type ReasonProps = { visitId: string; ruling: Ruling; action: Props['action']; onDone: () => void }

function Reason({ visitId, ruling, action, onDone }: ReasonProps) {
  const form = useActionForm(ruleOnCutSchema, action, { defaultValues: { visitId, ruling, reason: '' }, onDone })
  return (
    <ActionForm form={form} submitLabel={ruling === 'count' ? 'Count this cut' : 'Leave this cut out'}>
      <TextArea label="Reason" rows={2} {...form.text('reason')} />
    </ActionForm>
  )
}
