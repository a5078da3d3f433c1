import { Choice } from '@/app/_components/ui/choice'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import type { CastingForm } from './form-values'
import { Recount } from './recount'
import { chamberShapeOptions, deepEdgeOptions } from './groups'

export function FactFields({ form }: { form: CastingForm }) {
  return (
    <>
      <TextInput label="Name" hint="What the shop calls it" required {...form.text('name')} />
      <TextInput label="Material" hint="Aluminium, cast iron…" required {...form.text('material')} />
      <TextInput label="Chambers" required inputMode="numeric" autoComplete="off" {...form.text('chamberCount')} />
      <Choice
        label="Chamber shape"
        hint="Open: no quench pad opposite the valves. Closed: a pad that reaches to the gasket’s bore. Flat deck: the valves sit in a flat face and the chamber is in the piston; chamber figures are then left out of the record."
        required
        options={chamberShapeOptions}
        {...form.text('chamberShape')}
      />
      <Choice
        label="Deep edge of an angle cut"
        hint="All places across the head are measured from the other, the shallow edge."
        required
        options={deepEdgeOptions}
        {...form.text('deepEdge')}
      />
      <Recount form={form} />
      <TextArea label="Note" required={false} {...form.text('note')} />
    </>
  )
}
