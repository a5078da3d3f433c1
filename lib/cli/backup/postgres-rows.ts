import type { Client } from 'pg'
import {
  byName,
  quoted,
  rowsAtOnce,
  type Column,
  type Kind,
  type Row,
  type RowSource,
  type RowTarget,
  type Table,
  type Value,
} from './rows'

const kinds: Readonly<Record<string, Kind>> = {
  ...{ text: 'text', integer: 'number', 'double precision': 'number', boolean: 'boolean' },
  'timestamp without time zone': 'moment',
}

type ColumnRow = { readonly table: string; readonly name: string; readonly type: string; readonly place: number | null }

const columnsSql = `SELECT c.table_name AS "table", c.column_name AS "name", c.data_type AS "type",
    (SELECT k.ordinal_position::int FROM information_schema.table_constraints t
      JOIN information_schema.key_column_usage k USING (constraint_schema, constraint_name)
      WHERE t.constraint_type = 'PRIMARY KEY' AND t.table_schema = c.table_schema AND t.table_name = c.table_name
        AND k.column_name = c.column_name) AS "place"
  FROM information_schema.columns c JOIN information_schema.tables b USING (table_schema, table_name)
  WHERE c.table_schema = current_schema() AND b.table_type = 'BASE TABLE' AND c.table_name NOT LIKE '\\_%'`

async function postgresTables(client: Client): Promise<Table[]> {
  const { rows } = await client.query<ColumnRow>(columnsSql)
  const names = [...new Set(rows.map(({ table }) => table))].sort()
  return names.map((name) => {
    const mine = rows.filter(({ table }) => table === name)
    const key = mine.filter(({ place }) => place !== null).sort((a, b) => (a.place ?? 0) - (b.place ?? 0))
    return { name, columns: mine.map(columnOf).sort(byName), key: key.map((column) => column.name) }
  })
}

function columnOf({ table, name, type }: ColumnRow): Column {
  const kind = kinds[type]
  if (!kind) throw new Error(`the column ${table}.${name} is of a kind that is not known (${type})`)
  return { name, kind }
}

const expressions: Readonly<Record<Kind, (column: string) => string>> = {
  text: (column) => column,
  number: (column) => column,
  boolean: (column) => `${column}::int`,
  moment: (column) => `(extract(epoch FROM ${column}) * 1000)::float8`,
}

/** In the order in which SQLite compares: by code point. */
function orderOf({ columns, key }: Table): string {
  const isText = (name: string) => columns.some((column) => column.name === name && column.kind === 'text')
  return key.map((name) => `${quoted(name)}${isText(name) ? ' COLLATE "C"' : ''}`).join(', ')
}

/** As it is while the transaction lasts: begin it with REPEATABLE READ. */
export const postgresSource = (client: Client): RowSource => ({
  tables: () => postgresTables(client),
  rows: async function* (table) {
    const names = table.columns.map(({ name, kind }) => expressions[kind](quoted(name))).join(', ')
    await client.query(
      `DECLARE rows_to_copy NO SCROLL CURSOR FOR SELECT ${names} FROM ${quoted(table.name)} ORDER BY ${orderOf(table)}`,
    )
    try {
      for (;;) {
        const { rows } = await client.query<Value[]>({
          text: `FETCH ${rowsAtOnce} FROM rows_to_copy`,
          rowMode: 'array',
        })
        if (rows.length > 0) yield rows
        if (rows.length < rowsAtOnce) return
      }
    } finally {
      await client.query('CLOSE rows_to_copy')
    }
  },
})

/** The most values that one statement of PostgreSQL takes. */
const mostValues = 65_535

/** The caller begins and ends the transaction, with the foreign keys put off to its end. */
export const postgresTarget = (client: Client): RowTarget => ({
  tables: () => postgresTables(client),
  add: async (table, rows) => {
    const most = Math.floor(mostValues / table.columns.length)
    for (let from = 0; from < rows.length; from += most) await addSome(client, table, rows.slice(from, from + most))
  },
})

async function addSome(client: Client, table: Table, rows: readonly Row[]): Promise<void> {
  const names = table.columns.map(({ name }) => quoted(name)).join(', ')
  const width = table.columns.length
  const marks = rows.map((_, row) => `(${table.columns.map((__, at) => `$${row * width + at + 1}`).join(', ')})`)
  const values = rows.flatMap((row) => row.map((value, at) => asSent(value, table.columns[at]?.kind)))
  await client.query(`INSERT INTO ${quoted(table.name)} (${names}) VALUES ${marks.join(', ')}`, values)
}

function asSent(value: Value, kind: Kind | undefined): Value | boolean {
  if (value === null) return null
  if (kind === 'moment') return new Date(value).toISOString().replace('Z', '')
  return kind === 'boolean' ? value === 1 : value
}

type Constraint = { readonly table: string; readonly name: string }
const foreignKeysSql = `SELECT r.relname AS "table", c.conname AS "name" FROM pg_constraint c
  JOIN pg_class r ON r.oid = c.conrelid JOIN pg_namespace n ON n.oid = r.relnamespace
  WHERE c.contype = 'f' AND n.nspname = current_schema()`

/**
 * Work in one transaction in which a row may come before the one that it points at: the foreign keys are looked at when all
 * rows are there, and are then as they were before. Then whatever counts by itself counts on from the last row.
 */
export async function withKeysPutOff<T>(client: Client, work: () => Promise<T>): Promise<T> {
  await client.query('BEGIN')
  try {
    const { rows: keys } = await client.query<Constraint>(foreignKeysSql)
    const alter = async (how: string) => {
      for (const { table, name } of keys) {
        await client.query(`ALTER TABLE ${quoted(table)} ALTER CONSTRAINT ${quoted(name)} ${how}`)
      }
    }
    await alter('DEFERRABLE INITIALLY DEFERRED')
    const done = await work()
    await client.query('SET CONSTRAINTS ALL IMMEDIATE')
    await alter('NOT DEFERRABLE')
    await countOn(client)
    await client.query('COMMIT')
    return done
  } catch (error) {
    await client.query('ROLLBACK')
    throw error
  }
}

const countersSql = `SELECT table_name AS "table", column_name AS "name" FROM information_schema.columns
  WHERE table_schema = current_schema() AND column_default LIKE 'nextval(%'`

async function countOn(client: Client): Promise<void> {
  const { rows } = await client.query<Constraint>(countersSql)
  for (const { table, name } of rows) {
    const last = `(SELECT max(${quoted(name)}) FROM ${quoted(table)})`
    // Called with false while the table is empty: then the first one is 1.
    await client.query(`SELECT setval(pg_get_serial_sequence($1, $2), coalesce(${last}, 1), ${last} IS NOT NULL)`, [
      quoted(table),
      name,
    ])
  }
}
