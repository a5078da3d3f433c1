'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/check-list'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import type { StepId } from '@/lib/core/route/types'
import { sendOutsideSchema } from '@/lib/schemas/outside'
import type { Sendable } from '@/lib/use-cases/outside/see-sending'
import { sendOutsideAction } from '../actions'

type Vendor = { readonly id: string; readonly name: string; readonly services: string }
type Props = { asked: string; heads: readonly Sendable[]; vendors: readonly Vendor[] }

const inches = (value: number): string => `${value.toFixed(3)} in`

/** One order: which heads, what is done to them, how much is left for us, when it is back. */
export function SendForm({ asked, heads, vendors }: Props) {
  const router = useRouter()
  const [visitIds, setVisitIds] = useState<readonly string[]>([asked])
  const open = new Map(heads.flatMap((head) => head.steps.map((step) => [step.id, step.label] as const)))
  const angle = open.has('angle-cut')
  const [scope, setScope] = useState<readonly StepId[]>(angle ? ['angle-cut'] : [])
  const form = useActionForm(sendOutsideSchema, sendOutsideAction, {
    defaultValues: {
      vendorId: '',
      scope: [...scope],
      heads: [{ visitId: asked, angleIn: '', flatIn: '', comesWith: '' }],
      finishesToSize: false,
      instructions: '',
      freight: '',
      tracking: '',
      promisedOn: '',
    },
    onDone: ({ orderId }) => router.push(`/away/${orderId}`),
  })
  const { setValue, watch } = form.form

  function pickHeads(ids: readonly string[]) {
    setVisitIds(ids)
    setValue(
      'heads',
      ids.map((visitId) => ({ visitId, angleIn: '', flatIn: '', comesWith: '' })),
    )
  }

  function pickScope(ids: readonly StepId[]) {
    setScope(ids)
    setValue('scope', [...ids])
  }

  const chosen = heads.filter((head) => visitIds.includes(head.visitId))
  const cutsAngle = scope.includes('angle-cut')
  return (
    <ActionForm form={form} submitLabel="Send it">
      <Select
        label="Vendor"
        required
        empty="Pick a vendor"
        options={vendors.map((vendor) => ({
          value: vendor.id,
          label: vendor.services === '' ? vendor.name : `${vendor.name}: ${vendor.services}`,
        }))}
        {...form.text('vendorId')}
      />
      <CheckList
        label="Heads in this box"
        name="heads"
        values={[...visitIds]}
        onChange={(event) => pickHeads(toggled(visitIds, event.target))}
        options={heads.map((head) => ({ value: head.visitId, label: `${head.tag}, job ${head.jobNumber}` }))}
      />
      <CheckList
        label="What the vendor does"
        hint="What is not ticked here stays ours."
        name="scope"
        values={[...scope]}
        onChange={(event) => pickScope(toggled(scope, event.target))}
        options={[...open].map(([value, label]) => ({ value, label }))}
      />
      {cutsAngle && (
        <>
          <Check
            label="The vendor finishes to size"
            hint="Otherwise the vendor cuts the angle part only, and the last flat cut is made here."
            {...form.text('finishesToSize')}
          />
          <Notice live={false} title="By the plan">
            {chosen.map((head) => (
              <p key={head.visitId}>
                {head.tag}: the vendor takes {inches(head.angleIn)} at the deep edge
                {watch('finishesToSize')
                  ? ` and ${inches(head.flatIn)} flat: nothing is left for us.`
                  : `; ${inches(head.flatIn)} flat is left for us.`}
              </p>
            ))}
          </Notice>
        </>
      )}
      <TextInput label="Promised back on" type="date" required={false} {...form.text('promisedOn')} />
      <TextArea
        label="What else to tell the vendor"
        required={false}
        rows={2}
        {...form.text('instructions')}
      />
      <div className="columns">
        <TextInput label="Freight" required={false} {...form.text('freight')} />
        <TextInput label="Tracking number" required={false} {...form.text('tracking')} />
      </div>
    </ActionForm>
  )
}
