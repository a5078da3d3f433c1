import { Select } from '@/app/_components/ui/select'
import { Table } from '@/app/_components/ui/table'
import { importFields, type ImportField } from '@/lib/core/customers/import-columns'
import type { ImportPreview } from '@/lib/use-cases/customers/preview-import'

const fieldLabels: Readonly<Record<ImportField, string>> = {
  ...{ name: 'Name', firstName: 'First name', lastName: 'Last name', phone: 'Phone', otherPhone: 'Other phone' },
  ...{ email: 'E-mail', address: 'Address', note: 'Note' },
}
const options = [
  { value: '', label: 'Leave out' },
  ...importFields.map((field) => ({ value: field, label: fieldLabels[field] })),
]

type Props = { preview: ImportPreview; onColumn: (at: number, field: ImportField | '') => void }

/** What each column holds, to be changed; the first customers as they would be; every line that is left out, and why. */
export function ImportShown({ preview, onColumn }: Props) {
  const { heading, columns, count, first, bad, badCount, doubled, doubledCount } = preview
  return (
    <div className="stack">
      <h2>Columns</h2>
      <div className="row">
        {heading.map((name, at) => (
          <Select
            key={at}
            label={name || `Column ${at + 1}`}
            options={options}
            value={columns[at] ?? ''}
            onChange={(event) => onColumn(at, event.target.value as ImportField | '')}
          />
        ))}
      </div>
      <p>
        <strong>{count}</strong> to import, <strong>{badCount}</strong> with errors, <strong>{doubledCount}</strong>{' '}
        already known.
      </p>
      <Table
        label="The first of them"
        caption
        columns={[
          { id: 'line', label: 'Line', figure: true },
          ...(['name', 'phone', 'otherPhone', 'email', 'address', 'note'] as const).map((id) => ({
            id,
            label: fieldLabels[id],
          })),
        ]}
        rows={first.map(({ line, contact }) => ({ id: String(line), cells: { line, ...contact } }))}
        empty={<p className="soft">No line can be imported as it is.</p>}
      />
      <Out label="Lines with errors" lines={bad} count={badCount} />
      <Out label="Already known" lines={doubled} count={doubledCount} />
    </div>
  )
}

function Out({ label, lines, count }: { label: string; lines: ImportPreview['bad']; count: number }) {
  if (count === 0) return null
  return (
    <>
      <Table
        label={label}
        caption
        columns={[
          { id: 'line', label: 'Line', figure: true },
          { id: 'name', label: 'Name', head: true },
          { id: 'why', label: 'Why it is left out' },
        ]}
        rows={lines.map(({ line, name, why }) => ({ id: String(line), cells: { line, name, why } }))}
      />
      {count > lines.length && <p className="soft">Only the first {lines.length} are shown.</p>}
    </>
  )
}
