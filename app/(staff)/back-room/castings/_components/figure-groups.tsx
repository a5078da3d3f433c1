import { useWatch } from 'react-hook-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { castingFigures } from '@/lib/core/casting/figures'
import styles from '../../_components/fields.module.css'
import type { CastingForm } from './form-values'
import { figureLabel, groupsOf } from './groups'

export function FigureGroups({ form }: { form: CastingForm }) {
  const shape = useWatch({ control: form.form.control, name: 'chamberShape' })
  return groupsOf(shape).map(({ id, title, about, keys }) => (
    <section key={id} className="part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <p className="soft">{about}</p>
      <div className={styles.grid}>
        {keys.map((key) => (
          <FormFigure
            key={key}
            form={form}
            name={`figures.any.${key}`}
            label={figureLabel(key)}
            quantity={castingFigures[key].quantity}
          />
        ))}
      </div>
    </section>
  ))
}
