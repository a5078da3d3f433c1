'use client'
import { useFieldArray } from 'react-hook-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import { boltQuantities } from '@/lib/schemas/casting'
import styles from '../../_components/fields.module.css'
import type { CastingForm } from './form-values'
import { boltFigures, boltLabels } from './groups'

const newBolt = (label: string) => ({
  label,
  xIn: '',
  yIn: '',
  diameterIn: '',
  boltIn: '',
  lengthIn: '',
  blind: false,
  threadLeftIn: '',
})

export function BoltFields({ form }: { form: CastingForm }) {
  const { fields, append, remove } = useFieldArray({ control: form.form.control, name: 'bolts' })
  return (
    <section className="part" aria-labelledby="single-bolts">
      <h2 id="single-bolts">Single bolts</h2>
      <p className="soft">For the drawing of the head, and for holes that differ from the others.</p>
      {fields.map((field, at) => (
        <fieldset key={field.id} className={styles.entry}>
          <legend>Bolt {at + 1}</legend>
          <div className={styles.tight}>
            <TextInput label={boltLabels.label} {...form.text(`bolts.${at}.label`)} />
            {boltFigures.map((key) => (
              <FormFigure
                key={key}
                form={form}
                name={`bolts.${at}.${key}`}
                label={boltLabels[key]}
                quantity={boltQuantities[key]}
              />
            ))}
            <Check label="Blind hole" {...form.text(`bolts.${at}.blind`)} />
          </div>
          <div>
            <Button variant="quiet" onClick={() => remove(at)}>
              Remove bolt {at + 1}
            </Button>
          </div>
        </fieldset>
      ))}
      <div>
        <Button onClick={() => append(newBolt(String(fields.length + 1)))}>Add a bolt</Button>
      </div>
    </section>
  )
}
