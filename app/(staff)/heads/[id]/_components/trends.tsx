import { Marks } from '@/app/_components/charts/marks-svg'
import { Table } from '@/app/_components/ui/table'
import { cornerNames } from '@/lib/core/straightness/corners-fit'
import { pointLabel } from '@/lib/core/readings/points'
import { capital } from '@/lib/core/route/words'
import { chamberTrendDrawing } from '@/lib/drawing/chamber-trend'
import type { HeadView } from '@/lib/use-cases/heads/see-head'
import styles from './trends.module.css'

/** What became of the chambers and of the thickness over all visits. */
export function Trends({ head }: { head: HeadView }) {
  const { stages } = head.thickness
  return (
    <section className="stack part" aria-label="Over all visits">
      <h2>Over all visits</h2>
      <p>
        <strong>Metal gone:</strong> {head.thickness.removed}
        {head.newThickness !== '' && <span className="soft"> New: {head.newThickness}.</span>}
      </p>
      {head.chamberTrend.length > 0 && <Chambers head={head} />}
      {stages.length > 0 && (
        <details>
          <summary>Thickness at the corners</summary>
          <Table
            label="Thickness at the corners, over all visits"
            columns={[
              { id: 'stage', label: 'Stage', head: true },
              { id: 'job', label: 'Job' },
              ...cornerNames.map((corner) => ({
                id: corner,
                label: capital(pointLabel(corner)),
                figure: true,
              })),
              { id: 'gone', label: 'Removed since new, at the thinnest', figure: true },
            ]}
            rows={stages.map(({ id, label, jobNumber, corners, gone }) => ({
              id,
              cells: {
                stage: label,
                job: jobNumber,
                gone: gone ?? 'new thickness not known',
                ...Object.fromEntries(cornerNames.map((corner, place) => [corner, corners[place] ?? '–'])),
              },
            }))}
          />
        </details>
      )}
    </section>
  )
}

function Chambers({ head }: { head: HeadView }) {
  const stages = head.chamberTrend
  const most = Math.max(...stages.map(({ ccs }) => ccs.length))
  const chambers = Array.from({ length: most }, (_, place) => `chamber ${place + 1}`)
  return (
    <>
      <figure className="stack">
        <Marks
          drawing={chamberTrendDrawing(stages, {
            title: 'Chamber volumes over all visits, cc',
            widthMm: 100,
          })}
          className={styles.drawing}
        />
        <figcaption className="soft">
          Chamber volumes in cc. Hatched: the target with its tolerance. A dashed line or an open point: valves and plug
          not noted. Two strokes in place of a line: other valves or another plug, not like for like.
        </figcaption>
      </figure>
      <details>
        <summary>Chamber volumes as a table</summary>
        <Table
          label="Chamber volumes over all visits, cc"
          columns={[
            { id: 'stage', label: 'Stage', head: true },
            { id: 'job', label: 'Job' },
            ...chambers.map((chamber) => ({ id: chamber, label: capital(chamber), figure: true })),
            { id: 'target', label: 'Target', figure: true },
            { id: 'fitted', label: 'Valves and plug' },
            { id: 'note', label: 'Like for like' },
          ]}
          rows={stages.map((stage, at) => ({
            id: stage.id,
            cells: {
              stage: stage.label,
              job: stage.jobNumber,
              target: stage.target?.text ?? '–',
              fitted: stage.fitted === '' ? 'not noted' : stage.fitted,
              note: at === 0 ? '' : stage.notLike === '' ? 'yes' : `no: ${stage.notLike}`,
              ...Object.fromEntries(chambers.map((chamber, place) => [chamber, stage.texts[place] ?? '–'])),
            },
          }))}
        />
      </details>
    </>
  )
}
