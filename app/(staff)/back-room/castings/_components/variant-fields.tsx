'use client'
import { useFieldArray } from 'react-hook-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import styles from '../../_components/fields.module.css'
import type { CastingForm, CastingValues } from './form-values'
import { supplyOptions } from './groups'

const newVariant: CastingValues['variants'][number] = {
  variantId: '',
  name: '',
  nominalCc: '',
  supply: 'stock',
  cutByMaker: false,
  leadDays: '',
  cost: '',
}

export function VariantFields({ form }: { form: CastingForm }) {
  const { fields, append, remove } = useFieldArray({ control: form.form.control, name: 'variants' })
  return (
    <section className="part" aria-labelledby="variants">
      <h2 id="variants">Versions to buy</h2>
      <p className="soft">The same casting with another chamber, or already cut by its maker.</p>
      {fields.map((field, at) => (
        <fieldset key={field.id} className={styles.entry}>
          <legend>Variant {at + 1}</legend>
          <div className={styles.tight}>
            <TextInput label="Name" {...form.text(`variants.${at}.name`)} />
            <FormFigure
              form={form}
              name={`variants.${at}.nominalCc`}
              label="Nominal chamber"
              quantity="chamberVolume"
            />
            <Select label="Supply" options={supplyOptions} {...form.text(`variants.${at}.supply`)} />
            <TextInput label="Lead time in days" inputMode="numeric" {...form.text(`variants.${at}.leadDays`)} />
            <TextInput label="Cost" inputMode="decimal" {...form.text(`variants.${at}.cost`)} />
            <Check label="Cut by its maker" {...form.text(`variants.${at}.cutByMaker`)} />
          </div>
          <div>
            <Button variant="quiet" onClick={() => remove(at)}>
              Remove variant {at + 1}
            </Button>
          </div>
        </fieldset>
      ))}
      <div>
        <Button onClick={() => append(newVariant)}>Add a variant</Button>
      </div>
    </section>
  )
}
