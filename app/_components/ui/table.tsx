import type { ReactNode } from 'react'
import styles from './table.module.css'

export type Column = {
  id: string
  label: ReactNode
  /** Figures stand to the right, one under the other. */
  figure?: boolean
  /** The cell that names the row, read out before the others. */
  head?: boolean
}

export type Row = { id: string; cells: Readonly<Record<string, ReactNode>> }

type Props = {
  label: string
  columns: readonly Column[]
  rows: readonly Row[]
  /** Show the label above the table. */
  caption?: boolean
  /** On a phone each row stands as lines of its own, every figure beside its name. */
  stacks?: boolean
  /** Stands in place of the table when there are no rows: an `EmptyState`. */
  empty?: ReactNode
}

/**
 * A table that scrolls in its own labelled, focusable region when the page is too narrow for it. The roles are said because
 * a table that is drawn as blocks is none to a screen reader any more.
 */
export function Table({ label, columns, rows, caption = false, stacks = false, empty }: Props) {
  if (rows.length === 0 && empty !== undefined) return empty
  return (
    <div role="region" aria-label={label} tabIndex={0} className={styles.region}>
      <table role="table" className={stacks ? `${styles.table} ${styles.stacks}` : styles.table}>
        <caption className={caption ? styles.caption : 'visually-hidden'}>{label}</caption>
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((column) => (
              <th key={column.id} role="columnheader" scope="col" className={column.figure ? styles.figure : undefined}>
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => (
            <tr key={row.id} role="row">
              {columns.map((column) => (
                <Cell key={column.id} column={column}>
                  {row.cells[column.id]}
                </Cell>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Cell({ column: { figure, head, label }, children }: { column: Column; children: ReactNode }) {
  const className = figure ? styles.figure : undefined
  if (head) {
    return (
      <th role="rowheader" scope="row" className={className}>
        {children}
      </th>
    )
  }
  return (
    <td role="cell" className={className} data-name={typeof label === 'string' ? label : undefined}>
      {children}
    </td>
  )
}
