'use client'
import { Check } from '@/app/_components/ui/check'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { addInstrumentSchema, changeInstrumentSchema, instrumentKinds } from '@/lib/schemas/shop'
import type { InstrumentSeen } from '@/lib/use-cases/shop/see-instruments'
import { EntryForm } from '../../_components/entry-form'
import { addInstrumentAction, changeInstrumentAction } from '../actions'

const labels = {
  name: 'Name',
  kind: 'Kind',
  lastCheckedOn: 'Last checked',
  dueOn: 'Next check due',
  retired: 'No longer in use',
}
type FieldName = Exclude<keyof typeof labels, 'retired'>
const kindOptions = instrumentKinds.map((kind) => ({ value: kind, label: kind }))
const kindOf = (kind: string) => instrumentKinds.find((known) => known === kind) ?? 'other'

/** `text`: what the form gives each control. */
function InstrumentFields<Props extends object>({ text }: { text: (name: FieldName) => Props }) {
  return (
    <>
      <TextInput label={labels.name} hint="As marked on the instrument; readings name it" required {...text('name')} />
      <Select label={labels.kind} options={kindOptions} {...text('kind')} />
      <TextInput label={labels.lastCheckedOn} required={false} type="date" {...text('lastCheckedOn')} />
      <TextInput label={labels.dueOn} required={false} type="date" {...text('dueOn')} />
    </>
  )
}

export const AddInstrumentForm = () => (
  <EntryForm
    schema={addInstrumentSchema}
    action={addInstrumentAction}
    values={{ name: '', kind: 'gauge', lastCheckedOn: '', dueOn: '' }}
    submitLabel="Add this instrument"
    fields={InstrumentFields}
  />
)

export function InstrumentForm({ instrument }: { instrument: InstrumentSeen }) {
  const { id: instrumentId, version, name, kind, lastCheckedOn, dueOn, retired } = instrument
  const days = { lastCheckedOn: lastCheckedOn ?? '', dueOn: dueOn ?? '' }
  return (
    <EntryForm
      schema={changeInstrumentSchema}
      action={changeInstrumentAction}
      values={{ instrumentId, version, name, kind: kindOf(kind), ...days, retired }}
      submitLabel="Save"
      fields={({ text }) => (
        <>
          <InstrumentFields text={text} />
          <Check label={labels.retired} {...text('retired')} />
        </>
      )}
      kept={{ what: name, labelOf: (path) => labels[path as keyof typeof labels] ?? path, by: '' }}
    />
  )
}
