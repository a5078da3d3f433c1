import 'server-only'
import { databaseUrlOfProcess } from '@/lib/env'
import { columns } from '@/prisma/generated/columns'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { providerOf, type Provider } from './gate/provider'

export type TableName = Prisma.TypeMap['meta']['modelProps'] extends string ? keyof Prisma.TypeMap['model'] : never
export type Row<T extends TableName> = Prisma.TypeMap['model'][T]['payload']['scalars']
type Kind = 'String' | 'Int' | 'Float' | 'Boolean' | 'DateTime'

/** The generated list has every column of every table: one that is missing is a type error here. */
const kinds: { readonly [T in TableName]: { readonly [C in keyof Row<T>]: Kind } } = columns

export type Rows<T extends TableName> = { readonly [N in T]: Row<N>[] }

/** Which rows of each table, as SQL after WHERE; they may name what `scope` defines. */
export type Wanted<T extends TableName> = { readonly [N in T]: string }

/** Common table expressions that the conditions use, with their parameters: `?` in the order they stand. */
export type Scope = { readonly sql: string; readonly params: readonly (string | number)[] }

/**
 * Rows of several tables in one statement. Every table's columns are laid out in slots by kind (text, doubles, whole
 * numbers), so that no value is turned into another type on its way: a double comes back to the last bit. The first row is
 * of no table; it fixes the types, which SQLite's adapter takes from the first value of a column.
 */
export async function readTables<T extends TableName>(
  reader: Reader,
  scope: Scope,
  wanted: Wanted<T>,
): Promise<Rows<T>> {
  const provider = providerOf(databaseUrlOfProcess())
  const names = Object.keys(wanted) as T[]
  const layouts = names.map((name) => layoutOf(name))
  const width = widthOf(layouts)
  const selects = layouts.map((layout, place) => selectOf(layout, place, width, wanted[layout.table as T], provider))
  const sql = `WITH ${scope.sql} ${[headerOf(width), ...selects].join(' UNION ALL ')}`
  const found = await reader.$queryRawUnsafe<RawRow[]>(numbered(sql, provider), ...scope.params)
  const rows = Object.fromEntries(names.map((name) => [name, [] as Row<TableName>[]])) as unknown as Rows<T>
  for (const raw of found) {
    const layout = layouts[Number(raw.tag)]
    if (layout) rows[layout.table as T].push(rowOf(layout, raw) as Row<T>)
  }
  return rows
}

type Slot = { readonly column: string; readonly slot: string; readonly kind: Kind }
type Layout = { readonly table: TableName; readonly slots: readonly Slot[] }
type RawRow = Readonly<Record<string, string | number | bigint | null>>

const letterOf: Readonly<Record<Kind, string>> = { String: 't', DateTime: 't', Float: 'f', Int: 'i', Boolean: 'i' }
const letters = ['t', 'f', 'i'] as const

const layouts = new Map<TableName, Layout>()

function layoutOf(table: TableName): Layout {
  const known = layouts.get(table)
  if (known) return known
  const used: Record<string, number> = {}
  const slots = Object.entries<Kind>(kinds[table]).map(([column, kind]) => {
    const letter = letterOf[kind]
    const place = used[letter] ?? 0
    used[letter] = place + 1
    return { column, kind, slot: `${letter}${place}` }
  })
  const layout = { table, slots }
  layouts.set(table, layout)
  return layout
}

/** The slots that the widest of these tables needs, in their order. */
function widthOf(of: readonly Layout[]): readonly string[] {
  const most = (letter: string): number =>
    Math.max(...of.map(({ slots }) => slots.filter(({ slot }) => slot.startsWith(letter)).length))
  return letters.flatMap((letter) => Array.from({ length: most(letter) }, (_, place) => `${letter}${place}`))
}

const header: Readonly<Record<string, string>> = {
  t: `CAST('' AS TEXT)`,
  f: 'CAST(0.5 AS DOUBLE PRECISION)',
  i: 'CAST(0 AS INTEGER)',
}

const headerOf = (width: readonly string[]): string =>
  `SELECT -1 AS "tag", ${width.map((slot) => `${header[slot.charAt(0)]} AS "${slot}"`).join(', ')}`

function selectOf(layout: Layout, tag: number, width: readonly string[], where: string, provider: Provider): string {
  const bySlot = new Map(layout.slots.map((slot) => [slot.slot, slot]))
  const values = width.map((slot) => {
    const found = bySlot.get(slot)
    return found ? expressionOf(found, provider) : 'NULL'
  })
  return `SELECT ${tag}, ${values.join(', ')} FROM "${layout.table}" WHERE ${where}`
}

/** Moments as text in UTC, as SQLite keeps them; a yes or no as 1 or 0. */
function expressionOf({ column, kind }: Slot, provider: Provider): string {
  if (kind === 'Boolean') return `CAST("${column}" AS INTEGER)`
  if (kind !== 'DateTime' || provider === 'sqlite') return `"${column}"`
  return `to_char("${column}", 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`
}

function rowOf({ slots }: Layout, raw: RawRow): Record<string, unknown> {
  const row: Record<string, unknown> = {}
  for (const { column, slot, kind } of slots) row[column] = valueOf(raw[slot] ?? null, kind)
  return row
}

/** SQLite's adapter gives whole numbers as big ones. */
function valueOf(value: string | number | bigint | null, kind: Kind): string | number | boolean | Date | null {
  if (value === null) return null
  switch (kind) {
    case 'Boolean':
      return Number(value) === 1
    case 'DateTime':
      return new Date(String(value))
    case 'String':
      return String(value)
    case 'Int':
    case 'Float':
      return Number(value)
  }
}

/** PostgreSQL numbers its parameters. */
function numbered(sql: string, provider: Provider): string {
  if (provider === 'sqlite') return sql
  let place = 0
  return sql.replaceAll('?', () => `$${++place}`)
}

/** A row that a foreign key of the database says is there. */
export function there<T>(row: T | null | undefined): T {
  if (row === null || row === undefined) throw new Error('A row is missing that another one points at.')
  return row
}

export const byId = <T extends { readonly id: string }>(rows: readonly T[]): ReadonlyMap<string, T> =>
  new Map(rows.map((row) => [row.id, row]))

/** The rows of each owner, in the order in which they came. */
export function rowsByOwner<T>(rows: readonly T[], ownerOf: (row: T) => string): ReadonlyMap<string, readonly T[]> {
  const owned = new Map<string, T[]>()
  for (const row of rows) {
    const before = owned.get(ownerOf(row))
    if (before) before.push(row)
    else owned.set(ownerOf(row), [row])
  }
  return owned
}
