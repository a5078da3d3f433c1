'use client'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { conditionWords } from '@/lib/core/route/condition-words'
import { floorOf } from '@/lib/core/route/floors'
import type { StepRef } from '@/lib/core/route/keys'
import { noRules, type RouteRules } from '@/lib/core/route/rules'
import { fixedCells } from '@/lib/core/route/rules-check'
import { askedOf } from '@/lib/core/route/rules-words'
import { tableOf } from '@/lib/core/route/table'
import { changeStepSchema } from '@/lib/schemas/rules'
import { ConflictResolver } from '../../_components/conflict-resolver'
import { changeStepAction } from '../actions'
import { ChangeShown, shownLabel } from './change-shown'
import { CellFields, labelOf, NameAndStation, OrderFields, Reason } from './step-fields'

type Values = z.input<typeof changeStepSchema>
type Props = { version: number; rules: RouteRules; of: StepRef; by: string }

/** A step that stands from the start, as this shop has it. */
export function StepForm({ version, rules, of: ref, by }: Props) {
  const row = tableOf(rules).rowOf(ref)
  const { waitsFor, undoneBy } = askedOf(ref, rules)
  const fresh: Values = {
    version,
    ref,
    label: row.label,
    station: row.station,
    cells: [...row.cells],
    waitsFor: [...waitsFor],
    undoneBy: [...undoneBy],
    reason: '',
  }
  const form = useActionForm(changeStepSchema, changeStepAction, {
    defaultValues: fresh,
  })
  const hasCondition = tableOf(noRules).rowOf(ref).when !== undefined
  return (
    <ActionForm form={form} submitLabel={shownLabel(form.value, 'Apply')}>
      <NameAndStation text={form.text} rules={rules} />
      {fixedCells.includes(ref) ? (
        <p className="soft">The shop cannot change when a head needs this step.</p>
      ) : (
        <CellFields
          text={form.text}
          cells={hasCondition ? ['●', '○', '◐', '–'] : ['●', '○', '–']}
          least={floorOf(ref)}
        />
      )}
      {conditionWords[ref] && (
        <p>
          <strong>Condition:</strong> {conditionWords[ref]}.
        </p>
      )}
      <OrderFields
        text={form.text}
        rules={rules}
        own={ref}
        open={{ waitsFor: waitsFor.length > 0, undoneBy: undoneBy.length > 0 }}
      />
      <Reason text={form.text} />
      <ChangeShown form={form} />
      <ConflictResolver form={form} fresh={fresh} what="The steps" labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
