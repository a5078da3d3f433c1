'use client'
import { useRouter } from 'next/navigation'
import { ActionForm } from '@/app/_components/form/action-form'
import { DraftNotice } from '@/app/_components/form/draft-notice'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { useDraft } from '@/app/_components/form/use-draft'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { cutTitle } from '@/lib/core/options/plan-words'
import { cutKinds, type CutKind } from '@/lib/core/route/types'
import { planChoiceSchema } from '@/lib/schemas/plan'
import type { PlanContext } from '@/lib/use-cases/plans/plan-context'
import { makePlanVersionAction } from './actions'
import { PlanPreview } from './plan-preview'

type Props = { context: PlanContext; seenVersion: number; before: PlanRecord | null }

const hints: Readonly<Record<CutKind, string>> = {
  none: 'The deck stays as it is.',
  'clean-up': 'As little as makes it flat.',
  flat: 'Flat to the target.',
  angle:
    'Deep at one edge, nothing at the other. A vendor that does not finish to size leaves nothing for us: take angle and flat then.',
  'angle-flat': 'The angle first, then the last flat cut to size.',
}

/** Chooses the cut; what it does is worked out as one types, and once more where it is kept. */
export function PlanForm({ context, seenVersion, before }: Props) {
  const router = useRouter()
  const form = useActionForm(planChoiceSchema, makePlanVersionAction, {
    defaultValues: {
      pairId: context.pairId,
      seenVersion,
      kind: before?.kind ?? (context.targetCc === null ? 'none' : 'flat'),
      splitBy: 'margin',
      flatIn: '',
      angleIn: '',
      angleDeg: '',
      stopAtIn: before?.kind === 'clean-up' ? String(before.flatIn) : '',
      sinkIn: '',
      reason: '',
    },
    onDone: () => router.refresh(),
  })
  const draft = useDraft(`plan ${context.pairId} ${seenVersion}`, form)
  const typed = form.form.watch()
  return (
    <>
      <DraftNotice draft={draft} />
      <ActionForm
        form={form}
        submitLabel={seenVersion === 0 ? 'Keep this plan' : `Keep as version ${seenVersion + 1}`}
      >
        <Choice
          label="Kind of cut"
          options={cutKinds.map((kind) => ({ value: kind, label: cutTitle(kind), hint: hints[kind] }))}
          {...form.text('kind')}
        />
        {typed.kind === 'clean-up' && (
          <TextInput
            label="Stop at, at the latest"
            hint="In inches, or with its unit: 8 thou."
            inputMode="decimal"
            required
            {...form.text('stopAtIn')}
          />
        )}
        {typed.kind === 'angle-flat' && (
          <>
            <Choice
              label="How it is shared"
              options={[
                {
                  value: 'margin',
                  label: `Flat part worth ${context.marginCc} cc`,
                  hint: 'the shop’s margin for the last cut in house',
                },
                { value: 'flat', label: 'By the flat part' },
                { value: 'angle', label: 'By the angle part', hint: 'its depth at the deep edge' },
                { value: 'degrees', label: 'By the angle in degrees' },
              ]}
              {...form.text('splitBy')}
            />
            {typed.splitBy === 'flat' && (
              <TextInput
                label="Flat part"
                hint="0.020 or 20 thou"
                inputMode="decimal"
                required
                {...form.text('flatIn')}
              />
            )}
            {typed.splitBy === 'angle' && (
              <TextInput
                label="Angle part at the deep edge"
                hint="0.063 or 63 thou"
                inputMode="decimal"
                required
                {...form.text('angleIn')}
              />
            )}
            {typed.splitBy === 'degrees' && (
              <TextInput label="Angle, degrees" inputMode="decimal" required {...form.text('angleDeg')} />
            )}
          </>
        )}
        {typed.kind !== 'none' && (
          <TextInput
            label="Seat work still to come sinks the valves by"
            hint="Leave empty when no seat work is planned. The cut then aims below the target by what it adds."
            inputMode="decimal"
            required={false}
            {...form.text('sinkIn')}
          />
        )}
        <PlanPreview context={context} typed={typed} />
        {seenVersion > 0 && <TextInput label="Why the plan is changed" required {...form.text('reason')} />}
      </ActionForm>
    </>
  )
}
