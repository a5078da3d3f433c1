'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import { orderSupplySchema, type OrderSupplyForm } from '@/lib/schemas/supply'
import type { HeadsToOrder, Ordering, PartsToOrder, VariantChoice } from '@/lib/use-cases/supply/see-ordering'
import { PickVendor } from '../../_components/pick-vendor'
import { orderSupplyAction } from '../../actions'

/** Starts with the first version on record: cut by its maker for a head booked so, plain for the others. */
const headLine = ({ heads, variants, cut }: HeadsToOrder): OrderSupplyForm['heads'][number] => {
  const first = variants.find((variant) => variant.cutByMaker === cut)
  return {
    variantId: first?.id ?? '',
    what: '',
    visitIds: heads.map((head) => head.visitId),
    cost: first?.cost ?? '',
  }
}

const partLine = ({ waitId, what }: PartsToOrder): OrderSupplyForm['parts'][number] => ({
  what,
  quantity: '',
  waitId,
  cost: '',
})

/** One order at one supplier, filled with what waits to be bought. */
export function OrderForm({ ordering }: { ordering: Ordering }) {
  const { job, vendors, heads, parts } = ordering
  const days = heads.map((line) => line.variants.find((variant) => variant.cutByMaker === line.cut)?.hereBy ?? '')
  const form = useActionForm(orderSupplySchema, orderSupplyAction, {
    defaultValues: {
      vendorId: '',
      jobId: job?.id ?? null,
      promisedOn: days.sort().at(-1) ?? '',
      note: '',
      heads: heads.map(headLine),
      parts: [...parts.map(partLine), { what: '', quantity: '', waitId: '', cost: '' }],
    },
  })
  return (
    <ActionForm form={form} submitLabel="Order">
      <div className="columns">
        <PickVendor
          label="Supplier"
          required
          empty="Choose a supplier"
          first={vendors}
          {...form.text('vendorId')}
          value={form.form.watch('vendorId')}
        />
        <TextInput
          label="Promised date"
          hint="Suggested from the lead time."
          type="date"
          required={false}
          {...form.text('promisedOn')}
        />
      </div>
      {heads.map((line, at) => (
        <HeadsLine key={line.heads[0]?.visitId} form={form} at={at} line={line} currency={ordering.currency} />
      ))}
      {parts.map((part, at) => (
        <PartsLine
          key={part.waitId}
          form={form}
          at={at}
          legend={`Parts for ${part.head}`}
          currency={ordering.currency}
        />
      ))}
      <PartsLine form={form} at={parts.length} legend="Other parts" currency={ordering.currency} />
      <TextInput label="Note" required={false} {...form.text('note')} />
    </ActionForm>
  )
}

type LineProps = { form: Form<OrderSupplyForm>; at: number; currency: string }

const variantLabel = ({ name, nominalText }: VariantChoice): string =>
  nominalText === '' ? name : `${name}, nominal ${nominalText} cc`

function HeadsLine({ form, at, line, currency }: LineProps & { line: HeadsToOrder }) {
  const { setValue, watch } = form.form
  const picked = watch(`heads.${at}.visitIds`)
  const variantId = watch(`heads.${at}.variantId`)
  const variant = form.text(`heads.${at}.variantId`)
  return (
    <fieldset className="stack">
      <legend>
        {line.casting}
        {line.cut && ', cut by its maker'}
      </legend>
      <CheckList
        label="For"
        hint="Heads not ticked are not ordered."
        name={`heads-${at}`}
        values={[...picked]}
        onChange={(event) => setValue(`heads.${at}.visitIds`, [...toggled(picked, event.target)])}
        options={line.heads.map((head) => ({ value: head.visitId, label: head.name }))}
      />
      <div className="columns">
        {line.variants.length > 0 && (
          <Select
            label="Version"
            empty="Not on record: describe it"
            options={line.variants.map((choice) => ({ value: choice.id, label: variantLabel(choice) }))}
            {...variant}
            onChange={(event) => {
              const chosen = line.variants.find((choice) => choice.id === event.target.value)
              setValue(`heads.${at}.cost`, chosen?.cost ?? '')
              return variant.onChange(event)
            }}
          />
        )}
        {variantId === '' && <TextInput label="Description" required {...form.text(`heads.${at}.what`)} />}
        <TextInput
          label={`Cost each, ${currency}`}
          required={false}
          inputMode="decimal"
          {...form.text(`heads.${at}.cost`)}
        />
      </div>
    </fieldset>
  )
}

function PartsLine({ form, at, legend, currency }: LineProps & { legend: string }) {
  return (
    <fieldset className="stack">
      <legend>{legend}</legend>
      <div className="columns">
        <TextInput label="Part" required={false} {...form.text(`parts.${at}.what`)} />
        <TextInput
          label="Quantity"
          hint="Leave empty to order none."
          required={false}
          inputMode="numeric"
          {...form.text(`parts.${at}.quantity`)}
        />
        <TextInput
          label={`Cost each, ${currency}`}
          required={false}
          inputMode="decimal"
          {...form.text(`parts.${at}.cost`)}
        />
      </div>
    </fieldset>
  )
}
