import { Marks } from '@/app/_components/charts/marks-svg'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { chamberForms } from '@/lib/core/casting/figures'
import { tracedOpening } from '@/lib/core/cut/outline-text'
import { formatFigure } from '@/lib/core/units/format-figure'
import { openingOutline } from '@/lib/drawing/opening-outline'
import type { CastingSeen } from '@/lib/use-cases/castings/see-castings'
import { formLabels } from './groups'
import styles from './outlines-shown.module.css'

type Props = { casting: Pick<CastingSeen, 'figures' | 'outlines' | 'deepEdge'> }

/** The openings that were traced: what the outline itself says of each, and the outline. */
export function OutlinesShown({ casting }: Props) {
  const milledWidthIn = casting.figures.find(({ key }) => key === 'milledWidthIn')?.value
  return chamberForms.map((form) => {
    const outline = casting.outlines.find((one) => one.form === form)
    const traced = outline && tracedOpening(outline.points, milledWidthIn)
    if (!traced?.ok || milledWidthIn === undefined) return null
    const { points, areaIn2, centreIn, perimeterIn } = traced.value
    const deepEdge = casting.deepEdge === 'intake' ? 'intake' : 'exhaust'
    return (
      <section key={form} className="part" aria-labelledby={`outline-${form}`}>
        <h2 id={`outline-${form}`}>Opening as traced, chamber {formLabels[form]}</h2>
        <DefinitionList
          items={[
            { label: 'Area', value: formatFigure(areaIn2, 'area') },
            { label: 'Centre from the shallow edge', value: formatFigure(centreIn, 'length') },
            { label: 'Perimeter', value: formatFigure(perimeterIn, 'length') },
            { label: 'Traced points', value: points.length },
          ]}
        />
        <div className={styles.plan}>
          <Marks drawing={openingOutline({ points, areaIn2, centreIn, milledWidthIn, deepEdge })} />
        </div>
      </section>
    )
  })
}
