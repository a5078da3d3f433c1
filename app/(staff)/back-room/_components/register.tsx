import { Link } from '@/app/_components/ui/link'
import type { ReactNode } from 'react'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Pager } from '@/app/_components/ui/pager'
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
  list: { readonly rows: readonly One[]; readonly more: boolean }
  page: number
  nameOf: (entry: One) => string
  /** The other cells, by column. */
  cellsOf: (entry: One) => Readonly<Record<string, ReactNode>>
  /** What one that is not in use any more is called; left out: retired. */
  ended?: string
  /** false: names are not links. */
  opens?: boolean
  /** What to do while the list is empty, one sentence. */
  empty: string
}

/** A list that the back room keeps, a page at a time; the retired ones stand last. */
export function Register<One extends Kept>(props: Props<One>) {
  const { title, href, add, note, columns, list, page, nameOf, cellsOf, opens = true, ended = 'retired', empty } = props
  const [first, ...others] = columns
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
        rows={list.rows.map((entry) => ({
          id: entry.id,
          cells: {
            ...cellsOf(entry),
            [first.id]: (
              <>
                {opens ? <Link href={`${href}/${entry.id}`}>{nameOf(entry)}</Link> : nameOf(entry)}
                {entry.retired && <span className="soft"> ({ended})</span>}
              </>
            ),
          },
        }))}
        empty={<p className="soft">{empty}</p>}
      />
      <Pager page={page} more={list.more} href={(to) => `${href}?page=${to}`} />
    </>
  )
}
