import { Marks } from '@/app/_components/charts/marks-svg'
import { Table } from '@/app/_components/ui/table'
import type { SpecFlow } from '@/lib/core/spec/spec-sheet'
import { flowCurves } from '@/lib/drawing/flow-curves'
import styles from './spec.module.css'

const orDash = (value: string | null): string => value ?? '–'

/** One port's flow, before and after: the curve, and every figure in a table. */
export function Flow({ run }: { run: SpecFlow }) {
  const rows = [...run.rows, ...run.means]
  const size = { title: run.title, widthMm: 120, heightMm: 60, notLike: run.notLike.length > 0 }
  return (
    <section className="stack" aria-label={`Flow, ${run.title}`}>
      <h3>Flow, {run.title}</h3>
      {run.notLike.length > 0 && (
        <p>
          <strong>Not like for like:</strong> {run.notLike.join('; ')}.
        </p>
      )}
      {run.beforeConditions !== '' && <p>Before: {run.beforeConditions}</p>}
      {run.afterConditions !== '' && <p>After: {run.afterConditions}</p>}
      <Marks drawing={flowCurves(run.beforePoints, run.afterPoints, size)} className={styles.drawing} />
      <Table
        label={`Flow, ${run.title}`}
        columns={[
          { id: 'lift', label: 'Lift', head: true },
          { id: 'before', label: 'Before, cfm', figure: true },
          { id: 'after', label: 'After, cfm', figure: true },
          { id: 'diff', label: 'Difference, cfm', figure: true },
          { id: 'percent', label: '%', figure: true },
          { id: 'note', label: 'Note' },
        ]}
        rows={rows.map((row) => ({
          id: row.lift,
          cells: {
            lift: row.lift,
            before: orDash(row.before),
            after: orDash(row.after),
            diff: orDash(row.diffCfm),
            percent: orDash(row.diffPercent),
            note: row.note,
          },
        }))}
      />
    </section>
  )
}
