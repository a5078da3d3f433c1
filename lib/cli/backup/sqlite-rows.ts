import type Database from 'better-sqlite3'
import { tablesOf } from './database-file'
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
  ...{ TEXT: 'text', INTEGER: 'number', REAL: 'number', BOOLEAN: 'boolean', DATETIME: 'moment' },
}

type Info = { readonly name: string; readonly type: string; readonly pk: number }

function tableOf(file: Database.Database, name: string): Table {
  const info = file.pragma(`table_info(${quoted(name)})`) as Info[]
  const columns = info.map(({ name: column, type }): Column => {
    const kind = kinds[type]
    if (!kind) throw new Error(`the column ${name}.${column} is of a kind that is not known (${type})`)
    return { name: column, kind }
  })
  const key = info.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk)
  return { name, columns: columns.sort(byName), key: key.map((column) => column.name) }
}

const sqliteTables = (file: Database.Database): Table[] => tablesOf(file).map((name) => tableOf(file, name))

/** As it is while the reading lasts: call inside a transaction. */
export const sqliteSource = (file: Database.Database): RowSource => ({
  tables: async () => sqliteTables(file),
  rows: async function* (table) {
    const names = table.columns.map(({ name }) => quoted(name)).join(', ')
    const sql = `SELECT ${names} FROM ${quoted(table.name)} ORDER BY ${table.key.map(quoted).join(', ')}`
    let rows: Row[] = []
    for (const row of file.prepare(sql).raw().iterate() as IterableIterator<Value[]>) {
      rows.push(row.map((value, at) => inCommon(value, table.columns[at]?.kind)))
      if (rows.length < rowsAtOnce) continue
      yield rows
      rows = []
    }
    yield rows
  },
})

const inCommon = (value: Value, kind: Kind | undefined): Value =>
  kind === 'moment' && typeof value === 'string' ? Date.parse(value) : value

/** The caller begins and ends the transaction, without foreign keys: they are checked at its end. */
export function sqliteTarget(file: Database.Database): RowTarget {
  const ready = new Map<string, Database.Statement>()
  const into = (table: Table): Database.Statement => {
    const known = ready.get(table.name)
    if (known) return known
    const names = table.columns.map(({ name }) => quoted(name)).join(', ')
    const marks = table.columns.map(() => '?').join(', ')
    const statement = file.prepare(`INSERT INTO ${quoted(table.name)} (${names}) VALUES (${marks})`)
    ready.set(table.name, statement)
    return statement
  }
  return {
    tables: async () => sqliteTables(file),
    add: async (table, rows) => {
      const statement = into(table)
      for (const row of rows) statement.run(row.map((value, at) => asStored(value, table.columns[at]?.kind)))
    },
  }
}

/** As the client stores it, by which moments are compared as text. */
const asStored = (value: Value, kind: Kind | undefined): Value =>
  kind === 'moment' && value !== null ? new Date(value).toISOString().replace('Z', '+00:00') : value
