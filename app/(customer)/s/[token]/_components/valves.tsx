import { Table } from '@/app/_components/ui/table'
import type { SpecValves } from '@/lib/core/spec/spec-sheet'

/** A row a valve, a column a figure; what is wanted stands over them. */
export function Valves({ valves }: { valves: SpecValves }) {
  const { columns, wanted, rows, note } = valves
  return (
    <section className="stack" aria-label="Valves">
      <h3>Valves</h3>
      <Table
        label="Figures of each valve"
        columns={[
          { id: 'name', label: 'Valve', head: true },
          ...columns.map(({ label, unit }) => ({ id: label, label: `${label}, ${unit}`, figure: true })),
        ]}
        rows={[...wanted, ...rows].map(({ name, cells }) => ({
          id: name,
          cells: Object.fromEntries([['name', name], ...columns.map(({ label }, at) => [label, cells[at] || '–'])]),
        }))}
      />
      {note !== '' && <p>{note}</p>}
    </section>
  )
}
