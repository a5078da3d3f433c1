'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { DraftNotice } from '@/app/_components/form/draft-notice'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { useDraft } from '@/app/_components/form/use-draft'
import { FollowingPhotos, useAttached } from '@/app/_components/photo/attached-photos'
import { PhotoTray } from '@/app/_components/photo/photo-tray'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import type { StepKey } from '@/lib/core/route/step-ids'
import { openHoldSchema, partsWaitSchema, reportFindingSchema } from '@/lib/schemas/visit'
import { useDeeds } from '../../../../_app/use-deeds'

/** `head`: what it is called in the list of what was not sent yet. */
type FormProps = { visitId: string; head: string; step: StepKey; onDone: () => void }

export function FindingForm({ visitId, head, step, onDone }: FormProps) {
  const deeds = useDeeds()
  const attached = useAttached(onDone)
  const form = useActionForm(reportFindingSchema, deeds('finding', `${head}: finding`), {
    defaultValues: { visitId, stepId: step.stepId, what: '' },
    onDone: ({ findingId, keptAs }) =>
      void attached.follow({ ...photoPlace(visitId, step), findingId, findingOp: keptAs }),
  })
  const draft = useDraft(`finding ${visitId}`, form)
  if (attached.following)
    return <FollowingPhotos attached={attached} kept="The finding is reported." onLeave={onDone} />
  return (
    <ActionForm form={form} submitLabel="Report it">
      <DraftNotice draft={draft} />
      <TextArea
        label="What was found"
        hint="The counter prices it and asks the customer."
        required
        {...form.text('what')}
      />
      <PhotoTray photos={attached.photos} captionHint="The customer reads it, once asked." />
    </ActionForm>
  )
}

const photoPlace = (visitId: string, { stepId, occurrence, orderId }: StepKey) => ({
  visitId,
  stepId,
  occurrence,
  orderId: orderId ?? '',
})

export function HoldForm({ visitId, head, step, onDone }: FormProps) {
  const deeds = useDeeds()
  const attached = useAttached(onDone)
  const form = useActionForm(openHoldSchema, deeds('hold', `${head}: hold`), {
    defaultValues: { visitId, stepId: step.stepId, reason: '' },
    onDone: ({ holdId, keptAs }) => void attached.follow({ ...photoPlace(visitId, step), holdId, holdOp: keptAs }),
  })
  const draft = useDraft(`hold ${visitId}`, form)
  if (attached.following) return <FollowingPhotos attached={attached} kept="The head is on hold." onLeave={onDone} />
  return (
    <ActionForm form={form} submitLabel="Put on hold">
      <DraftNotice draft={draft} />
      <TextArea
        label="What is wrong"
        hint="Nothing more is ticked until the owner has decided."
        required
        {...form.text('reason')}
      />
      <PhotoTray photos={attached.photos} />
    </ActionForm>
  )
}

export function WaitForm({ visitId, head, step, onDone }: FormProps) {
  const deeds = useDeeds()
  const form = useActionForm(partsWaitSchema, deeds('parts-wait', `${head}: waits for parts`), {
    defaultValues: { visitId, step, what: '', fromWhom: '', promisedOn: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="It waits">
      <TextInput label="What it waits for" required {...form.text('what')} />
      <TextInput label="From whom" required={false} {...form.text('fromWhom')} />
      <TextInput label="Promised on" type="date" required={false} {...form.text('promisedOn')} />
    </ActionForm>
  )
}
