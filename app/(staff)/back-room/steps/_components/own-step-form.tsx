'use client'
import { useWatch } from 'react-hook-form'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { readingSpecs } from '@/lib/core/readings/specs'
import { ownConditionIds, ownConditions } from '@/lib/core/route/own-conditions'
import { ownOwes } from '@/lib/core/route/own-owes'
import type { OwnStep, RouteRules } from '@/lib/core/route/rules'
import { capital } from '@/lib/core/route/words'
import { ownStepSchema } from '@/lib/schemas/rules'
import { ConflictResolver } from '../../_components/conflict-resolver'
import fields from '../../_components/fields.module.css'
import { ownStepAction } from '../actions'
import { ChangeShown, shownLabel } from './change-shown'
import { CellFields, labelOf, NameAndStation, OrderFields, Reason, stepOptions } from './step-fields'

type Values = z.input<typeof ownStepSchema>
type Props = {
  version: number
  rules: RouteRules
  /** Null: a new one. */
  step: OwnStep | null
  outside: boolean
  by: string
}

const blank = (outside: boolean): Omit<Values, 'version'> => ({
  id: '',
  label: '',
  station: outside ? 'outside' : 'port-bench',
  cells: ['○', '○', '○', '○'],
  when: '',
  limit: '',
  after: 'coating',
  waitsFor: [],
  undoneBy: [],
  owes: [],
  machining: false,
  retired: false,
  reason: '',
})

const asTyped = ({ limitIn, cells, waitsFor, undoneBy, owes, ...step }: OwnStep): Omit<Values, 'version'> => ({
  ...step,
  cells: [...cells],
  waitsFor: [...waitsFor],
  undoneBy: [...undoneBy],
  owes: owes.filter((kind) => (ownOwes as readonly string[]).includes(kind)) as Values['owes'],
  limit: limitIn === null ? '' : String(limitIn),
  reason: '',
})

/** A step of the shop's own: where it stands, when it comes, what it asks for. */
export function OwnStepForm({ version, rules, step, outside, by }: Props) {
  const fresh: Values = { version, ...(step ? asTyped(step) : blank(outside)) }
  const form = useActionForm(ownStepSchema, ownStepAction, {
    defaultValues: fresh,
  })
  const [when, cells] = useWatch({ control: form.form.control, name: ['when', 'cells'] })
  return (
    <ActionForm form={form} submitLabel={shownLabel(form.value, step ? 'Apply' : 'Add this step')}>
      <NameAndStation text={form.text} rules={rules} />
      <Select
        label="Comes after"
        hint="Its place in the working order."
        options={stepOptions(rules, step?.id ?? null).filter(({ value }) => value !== 'final' && value !== 'hand-over')}
        {...form.text('after')}
      />
      <CellFields text={form.text} cells={['●', '○', '◐', '–']} />
      <div className={fields.grid} hidden={!cells.includes('◐') && when === ''}>
        <Select
          label="Condition"
          hint="Used where “conditional” is chosen above."
          empty="no condition"
          options={ownConditionIds.map((id) => ({ value: id, label: ownConditions[id].label }))}
          {...form.text('when')}
        />
        {when !== '' && ownConditions[when].hasLimit && (
          <FormFigure form={form} name="limit" label="More than" quantity="depth" />
        )}
      </div>
      <CheckList
        label="Readings needed before it can be ticked"
        options={ownOwes.map((kind) => ({ value: kind, label: readingSpecs[kind].label }))}
        {...form.text('owes')}
      />
      <Check
        label="Makes chips or dust"
        hint="The head is then washed, wrapped and inspected."
        {...form.text('machining')}
      />
      <OrderFields
        text={form.text}
        rules={rules}
        own={step?.id ?? null}
        open={{ waitsFor: (step?.waitsFor.length ?? 0) > 0, undoneBy: (step?.undoneBy.length ?? 0) > 0 }}
      />
      {step && (
        <Check
          label="No longer used"
          hint="Not on new jobs. Heads that have the step keep it."
          {...form.text('retired')}
        />
      )}
      <Reason text={form.text} />
      <ChangeShown form={form} />
      <ConflictResolver form={form} fresh={fresh} what="The steps" labelOf={(path) => capital(labelOf(path))} by={by} />
    </ActionForm>
  )
}
