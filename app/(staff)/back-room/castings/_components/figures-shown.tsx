import { DefinitionList, type Definition } from '@/app/_components/ui/definition-list'
import { chamberForms, type CastingFigureKey } from '@/lib/core/casting/figures'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { chamberKeys, figureLabel, formLabels, groupsOf } from './groups'

type Figures = CastingSeen['figures']

function items(figures: Figures, form: string, keys: readonly CastingFigureKey[]): Definition[] {
  return keys.flatMap((key) => {
    const known = figures.find((figure) => figure.form === form && figure.key === key)
    return known ? [{ label: figureLabel(key), value: typedFigure(known) }] : []
  })
}

/** What is known of the casting, group by group; a group without a figure says so. */
export function FiguresShown({ figures, shape }: { figures: Figures; shape: string }) {
  const chambers = chamberForms.map((form) => ({
    id: form,
    title: `Chamber ${formLabels[form]}`,
    shown: items(figures, form, chamberKeys),
  }))
  const others = groupsOf(shape).map(({ id, title, keys }) => ({ id, title, shown: items(figures, 'any', keys) }))
  return [...chambers.filter(({ shown }) => shown.length > 0), ...others].map(({ id, title, shown }) => (
    <section key={id} className="part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {shown.length === 0 ? <p className="soft">Nothing on record yet.</p> : <DefinitionList items={shown} />}
    </section>
  ))
}
