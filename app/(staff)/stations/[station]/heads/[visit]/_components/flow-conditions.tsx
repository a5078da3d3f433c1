'use client'
import { TextInput } from '@/app/_components/ui/text-input'
import { flowConditionFields } from '@/lib/core/readings/flow-conditions'

type Props = {
  values: Readonly<Record<string, string>>
  errors: Readonly<Record<string, string>>
  onChange: (values: Record<string, string>) => void
}

/** What the run was made with: without it no two runs can be held against each other. */
export function FlowConditions({ values, errors, onChange }: Props) {
  return (
    <fieldset className="stack">
      <legend>How it was run</legend>
      <div className="columns">
        {flowConditionFields.map((field) => (
          <TextInput
            key={field.key}
            label={field.label}
            hint={field.hint}
            error={errors[field.key]}
            inputMode={field.quantity ? 'decimal' : 'text'}
            value={values[field.key] ?? ''}
            onChange={(event) => onChange({ ...values, [field.key]: event.target.value })}
          />
        ))}
      </div>
    </fieldset>
  )
}
