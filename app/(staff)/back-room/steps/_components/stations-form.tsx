'use client'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import type { RouteRules } from '@/lib/core/route/rules'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import { stationLabels } from '@/lib/core/route/stations'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { nameStationsSchema } from '@/lib/schemas/rules'
import { ConflictResolver } from '../../_components/conflict-resolver'
import fields from '../../_components/fields.module.css'
import { nameStationsAction } from '../actions'
import { ChangeShown, shownLabel } from './change-shown'
import { Reason } from './step-fields'

type Values = z.input<typeof nameStationsSchema>
type Props = { version: number; rules: RouteRules; by: string }

const labelOf = (path: string): string => stationLabels[path.split('.')[1] as Station] ?? 'Reason'

/** What the shop calls its stations. */
export function StationsForm({ version, rules, by }: Props) {
  const fresh: Values = {
    version,
    names: { ...stationNamesOf(rules) },
    reason: '',
  }
  const form = useActionForm(nameStationsSchema, nameStationsAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel={shownLabel(form.value, 'Apply these names')}>
      <div className={fields.grid}>
        {stations.map((station) => (
          <TextInput
            key={station}
            label={stationLabels[station]}
            required
            autoComplete="off"
            {...form.text(`names.${station}`)}
          />
        ))}
      </div>
      <Reason text={form.text} />
      <ChangeShown form={form} />
      <ConflictResolver form={form} fresh={fresh} what="The stations" labelOf={labelOf} by={by} />
    </ActionForm>
  )
}
