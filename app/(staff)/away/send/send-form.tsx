'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { FirstPicks } from '@/app/_components/pick/use-picks'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import type { StepId } from '@/lib/core/route/step-ids'
import { payers, sendOutsideSchema } from '@/lib/schemas/outside'
import type { Redo, Sendable } from '@/lib/use-cases/outside/see-sending'
import { PickVendor } from '../_components/pick-vendor'
import { payerOptions } from '../_components/payer'
import { sendOutsideAction } from '../actions'
import { ByThePlan } from './by-the-plan'
import { NotAccepted, unaccepted } from './not-accepted'

type Props = {
  asked: readonly string[]
  heads: readonly Sendable[]
  vendors: FirstPicks<'vendors'>
  redo: Redo | null
  mayPlan: boolean
  mayAccept: boolean
  mayOverride: boolean
}

const line = (visitId: string) => ({ visitId, angleIn: '', flatIn: '', comesWith: '' })

/** One order: which heads, what is done to them, how much is left for us, when it is back. */
export function SendForm({ asked, heads, vendors, redo, mayPlan, mayAccept, mayOverride }: Props) {
  const [visitIds, setVisitIds] = useState<readonly string[]>(asked)
  const open = new Map(heads.flatMap((head) => head.steps.map((step) => [step.id, step.label] as const)))
  const [scope, setScope] = useState<readonly StepId[]>(redo?.scope ?? (open.has('angle-cut') ? ['angle-cut'] : []))
  const form = useActionForm(sendOutsideSchema, sendOutsideAction, {
    defaultValues: {
      vendorId: redo?.vendorId ?? '',
      scope: [...scope],
      heads: asked.map(line),
      finishesToSize: false,
      instructions: redo?.instructions ?? '',
      freight: '',
      tracking: '',
      promisedOn: '',
      redoOfId: redo?.orderId ?? '',
      redoCost: payers.find((payer) => payer === redo?.cost) ?? '',
      unacceptedWhy: '',
    },
  })
  const { setValue, watch } = form.form
  const lines = watch('heads')

  function pickHeads(ids: readonly string[]) {
    setVisitIds(ids)
    setValue(
      'heads',
      ids.map((id) => lines.find((one) => one.visitId === id) ?? line(id)),
    )
  }

  function pickScope(ids: readonly StepId[]) {
    setScope(ids)
    setValue('scope', [...ids])
  }

  const chosen = heads.filter((head) => visitIds.includes(head.visitId))
  const isAngle = scope.includes('angle-cut')
  return (
    <>
      {isAngle && <NotAccepted heads={chosen} mayAccept={mayAccept} mayOverride={mayOverride} />}
      <ActionForm form={form} submitLabel="Send">
        <PickVendor
          label="Vendor"
          required
          empty="Choose a vendor"
          first={vendors}
          {...form.text('vendorId')}
          value={watch('vendorId')}
        />
        {redo && (
          <Select
            label="Cost of rework paid by"
            required
            empty="Choose who pays"
            options={payerOptions}
            {...form.text('redoCost')}
          />
        )}
        <CheckList
          label="Heads in this box"
          name="heads"
          values={[...visitIds]}
          onChange={(event) => pickHeads(toggled(visitIds, event.target))}
          options={heads.map(({ visitId, tag, jobNumber, unread }) => ({
            value: visitId,
            label: `${tag}, job ${jobNumber}${unread ? ', not measured yet' : ''}`,
          }))}
        />
        <CheckList
          label="Work for the vendor"
          hint="Steps not ticked stay with the shop."
          name="scope"
          values={[...scope]}
          onChange={(event) => pickScope(toggled(scope, event.target))}
          options={[...open].map(([value, label]) => ({ value, label }))}
        />
        {isAngle && (
          <>
            <Check
              label="The vendor finishes to size"
              hint="If not, the vendor cuts only the angle part and the last flat cut is made here."
              {...form.text('finishesToSize')}
            />
            <ByThePlan heads={chosen} finishesToSize={watch('finishesToSize')} mayPlan={mayPlan} />
            {mayOverride && unaccepted(chosen).length > 0 && (
              <TextInput
                label="Why it goes out without the customer’s yes"
                hint="The owner’s word. It is kept in the trail."
                required={false}
                {...form.text('unacceptedWhy')}
              />
            )}
          </>
        )}
        {lines.map(({ visitId }, place) => {
          const tag = heads.find((head) => head.visitId === visitId)?.tag ?? ''
          return (
            <details key={visitId}>
              <summary>{tag}: parts sent with it, depths other than planned</summary>
              <div className="columns">
                <TextInput label="Sent with it" required={false} {...form.text(`heads.${place}.comesWith`)} />
                {isAngle && (
                  <FormFigure
                    form={form}
                    name={`heads.${place}.angleIn`}
                    label="Angle part, at the deep edge"
                    quantity="cutDepth"
                    required={false}
                  />
                )}
                <FormFigure
                  form={form}
                  name={`heads.${place}.flatIn`}
                  label="Flat part, cut by the vendor"
                  quantity="cutDepth"
                  required={false}
                />
              </div>
            </details>
          )
        })}
        <TextInput label="Promised date" type="date" required={false} {...form.text('promisedOn')} />
        <TextArea label="Instructions to the vendor" required={false} rows={2} {...form.text('instructions')} />
        <div className="columns">
          <TextInput label="Freight" required={false} {...form.text('freight')} />
          <TextInput label="Tracking number" required={false} {...form.text('tracking')} />
        </div>
      </ActionForm>
    </>
  )
}
