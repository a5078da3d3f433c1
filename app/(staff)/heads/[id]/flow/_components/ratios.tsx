import { Table } from '@/app/_components/ui/table'
import type { Ratio } from '@/lib/use-cases/flow/compare-runs'

/** What the exhaust flows of what the intake flows, run by run. */
export function Ratios({ ratio }: { ratio: Ratio }) {
  return (
    <section className="stack part" aria-label="Exhaust to intake">
      <h2>Exhaust to intake</h2>
      <Table
        label="Exhaust flow as a share of intake flow"
        columns={[
          { id: 'lift', label: 'Lift', head: true },
          ...ratio.names.map(({ id, name }) => ({ id, label: name, figure: true })),
        ]}
        rows={ratio.rows.map(({ lift, percents }) => ({
          id: lift,
          cells: { lift, ...Object.fromEntries(ratio.names.map(({ id }) => [id, percents[id] ?? '–'])) },
        }))}
      />
    </section>
  )
}
