'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Check } from '@/app/_components/ui/check'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { addInstrumentSchema, changeInstrumentSchema, instrumentKinds } from '@/lib/schemas/shop'
import type { InstrumentSeen } from '@/lib/use-cases/shop/see-instruments'
import { ConflictResolver } from '../../_components/conflict-resolver'
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

export function AddInstrumentForm() {
  const form = useActionForm(addInstrumentSchema, addInstrumentAction, {
    defaultValues: { name: '', kind: 'gauge', lastCheckedOn: '', dueOn: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Add this instrument">
      <InstrumentFields text={form.text} />
    </ActionForm>
  )
}

export function InstrumentForm({ instrument }: { instrument: InstrumentSeen }) {
  const { id: instrumentId, version, name, kind, lastCheckedOn, dueOn, retired } = instrument
  const days = { lastCheckedOn: lastCheckedOn ?? '', dueOn: dueOn ?? '' }
  const fresh = { instrumentId, version, name, kind: kindOf(kind), ...days, retired }
  const form = useActionForm(changeInstrumentSchema, changeInstrumentAction, {
    defaultValues: fresh,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <InstrumentFields text={form.text} />
      <Check label={labels.retired} {...form.text('retired')} />
      <ConflictResolver
        form={form}
        fresh={fresh}
        what={name}
        labelOf={(path) => labels[path as keyof typeof labels] ?? path}
        by=""
      />
    </ActionForm>
  )
}
