'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import { TextArea } from '@/app/_components/ui/text-area'
import { FormFigure } from '@/app/_components/form/form-figure'
import { castingFigures, chamberForms, type ChamberForm } from '@/lib/core/casting/figures'
import type { PerFormKey } from '@/lib/schemas/casting'
import styles from '../../_components/fields.module.css'
import type { CastingForm } from './form-values'
import { chamberKeys, figureLabel, formLabels } from './groups'

const hints: Partial<Record<PerFormKey, string>> = {
  openingAreaIn2:
    'Area of the traced outline at the deck; gives the rate. Leave empty to take it from the outline below.',
  openingCentreIn: 'Where the depth of an angle cut equals its mean depth.',
  thouPerCc: 'Thou of flat cut for 1 cc, where the shop knows it.',
  perimeterIn: 'Only for a first estimate of the rate.',
}

/** One block a chamber form; those without figures stay folded. */
export function ChamberFields({ form }: { form: CastingForm }) {
  const shape = useWatch({ control: form.form.control, name: 'chamberShape' })
  if (shape === 'flat-deck') return null
  return (
    <section className="part" aria-labelledby="chamber">
      <h2 id="chamber">Chamber</h2>
      <p className="soft">All figures are optional. Results that need a missing figure say so.</p>
      {chamberForms.map((chamberForm) => (
        <FormBlock key={chamberForm} form={form} chamberForm={chamberForm} />
      ))}
    </section>
  )
}

function FormBlock({ form, chamberForm }: { form: CastingForm; chamberForm: ChamberForm }) {
  const { control } = form.form
  const figures = useWatch({ control, name: `figures.${chamberForm}` })
  const outline = useWatch({ control, name: `outlines.${chamberForm}` })
  const known = [...Object.values(figures ?? {}), outline].filter((text) => text).length
  // Decided once: a block must not fold away under the fingers when its last figure is rubbed out.
  const [open] = useState(chamberForm === 'as-cast' || known > 0)
  return (
    <details open={open}>
      <summary>
        Chamber {formLabels[chamberForm]} <span className="soft">({known} known)</span>
      </summary>
      <div className="stack">
        <div className={styles.grid}>
          {chamberKeys.map((key) => (
            <FormFigure
              key={key}
              form={form}
              name={`figures.${chamberForm}.${key}`}
              label={figureLabel(key)}
              quantity={castingFigures[key].quantity}
              hint={hints[key]}
            />
          ))}
        </div>
        <TextArea
          label="Outline of the opening, traced from the deck"
          hint="One point per line, x then y: inches from the shallow edge and from end 1 of the chamber. Paste from a digitiser or a spreadsheet. Add mm to every figure if they are millimetres."
          required={false}
          rows={8}
          spellCheck={false}
          placeholder={'2.105 0.480\n2.310 0.415'}
          {...form.text(`outlines.${chamberForm}`)}
        />
      </div>
    </details>
  )
}
