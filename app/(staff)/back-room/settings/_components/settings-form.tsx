'use client'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import {
  settingFields,
  settingGroups,
  settingText,
  type SettingField,
  type SettingKey,
} from '@/lib/core/shop/setting-fields'
import type { ShopLimits } from '@/lib/core/shop/settings'
import { changeSettingsSchema } from '@/lib/schemas/settings'
import { ConflictResolver } from '../../_components/conflict-resolver'
import styles from '../../_components/fields.module.css'
import { changeSettingsAction } from '../actions'

type Values = z.input<typeof changeSettingsSchema>

const textsOf = (settings: ShopLimits): Values['values'] =>
  Object.fromEntries(
    settingFields.map((field) => [field.key, settingText(field, settings[field.key])]),
  ) as Values['values']

const labelOf = (path: string): string => {
  const key = path.split('.')[1]
  return settingFields.find((field) => field.key === key)?.label ?? 'Reason'
}

type Props = { version: number; settings: ShopLimits; by: string }

export function SettingsForm({ version, settings, by }: Props) {
  const fresh: Values = { version, values: textsOf(settings), reason: '' }
  const form = useActionForm(changeSettingsSchema, changeSettingsAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Apply these limits" className="stack-large">
      {settingGroups.map((group) => (
        <section key={group.title} className="part">
          <h2>{group.title}</h2>
          <div className={styles.grid}>
            {group.fields.map((field) => (
              <SettingInput key={field.key} form={form} field={field} />
            ))}
          </div>
        </section>
      ))}
      <Reason form={form} />
      <ConflictResolver form={form} fresh={fresh} what="The limits" labelOf={labelOf} by={by} />
    </ActionForm>
  )
}

/** A part of its own, so that it registers after the limits and a wrong limit gets the focus first. */
function Reason({ form }: { form: Form<Values, { version: number }> }) {
  return (
    <section className="part">
      <h2>Reason</h2>
      <TextArea label="Reason" hint="Kept in the history of the limits." required {...form.text('reason')} />
    </section>
  )
}

type InputProps = { form: Form<Values, { version: number }>; field: SettingField }

function SettingInput({ form, field }: InputProps) {
  const { key, kind, label, about } = field
  const name: `values.${SettingKey}` = `values.${key}`
  const hint = about || undefined
  if ('quantity' in kind) {
    return <FormFigure form={form} name={name} label={label} quantity={kind.quantity} hint={hint} />
  }
  return (
    <TextInput
      label={`${label}, ${kind.unit}`}
      hint={hint}
      inputMode="decimal"
      autoComplete="off"
      {...form.text(name)}
    />
  )
}
