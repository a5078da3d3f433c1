import { Table } from '@/app/_components/ui/table'
import type { ColumnState } from '@/lib/core/valve-sheet/sheet'
import type { SheetView } from '@/lib/use-cases/heads/see-head'

const stateWords: Readonly<Record<ColumnState, string>> = {
  empty: '',
  part: 'not all yet',
  filled: 'filled, not measured',
  'part filled': 'some filled, not measured',
  measured: '',
}

type Props = { sheet: SheetView; jobNumber: string }

/** Every valve of the head with what was measured of it; what was filled in one go is marked cell by cell. */
export function ValveSheetTable({ sheet, jobNumber }: Props) {
  return (
    <section className="stack" aria-label="Valve sheet">
      <h3>Valve sheet</h3>
      <Table
        label={`Valve sheet, job ${jobNumber}`}
        columns={[
          { id: 'valve', label: 'Valve', head: true },
          ...sheet.columns.map(({ kind, label, unit, state }) => ({
            id: kind,
            figure: true,
            label: (
              <>
                {[label, unit].filter(Boolean).join(', ')}
                {stateWords[state] !== '' && <div className="soft">{stateWords[state]}</div>}
              </>
            ),
          })),
        ]}
        rows={sheet.rows.map(({ name, cells }) => ({
          id: name,
          cells: {
            valve: name,
            ...Object.fromEntries(
              sheet.columns.map(({ kind }, at) => {
                const cell = cells[at]
                return [
                  kind,
                  cell?.filled ? (
                    <>
                      {cell.text} <span className="soft">filled</span>
                    </>
                  ) : (
                    (cell?.text ?? '')
                  ),
                ]
              }),
            ),
          },
        }))}
      />
    </section>
  )
}
