import Link from 'next/link'
import type { ReactNode } from 'react'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Table, type Column } from '@/app/_components/ui/table'
import { PageHead } from './page-head'

type Kept = { readonly id: string; readonly retired: boolean }

type Props<One extends Kept> = {
  title: string
  /** Address of the list; an entry is at `href/id`, a new one at `href/new`. */
  href: string
  /** Label of the button that adds one; left out: this person may not. */
  add?: string
  note?: string
  /** The first names the entry. */
  columns: readonly [Column, ...Column[]]
  entries: readonly One[]
  nameOf: (entry: One) => string
  /** The other cells, by column. */
  cellsOf: (entry: One) => Readonly<Record<string, ReactNode>>
  /** false: names are not links. */
  opens?: boolean
  /** What to do while the list is empty, one sentence. */
  empty: string
}

/** A list that the back room keeps: its entries, the retired ones last. */
export function Register<One extends Kept>(props: Props<One>) {
  const { title, href, add, note, columns, entries, nameOf, cellsOf, opens = true, empty } = props
  const [first, ...others] = columns
  const sorted = [...entries.filter(({ retired }) => !retired), ...entries.filter(({ retired }) => retired)]
  const addButton = add !== undefined && (
    <ButtonLink href={`${href}/new`} variant="main">
      {add}
    </ButtonLink>
  )
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title={title} action={addButton}>
        {note && <p className="soft">{note}</p>}
      </PageHead>
      <Table
        label={title}
        columns={[{ ...first, head: true }, ...others]}
        rows={sorted.map((entry) => ({
          id: entry.id,
          cells: {
            ...cellsOf(entry),
            [first.id]: (
              <>
                {opens ? <Link href={`${href}/${entry.id}`}>{nameOf(entry)}</Link> : nameOf(entry)}
                {entry.retired && <span className="soft"> (retired)</span>}
              </>
            ),
          },
        }))}
        empty={<p className="soft">{empty}</p>}
      />
    </>
  )
}
