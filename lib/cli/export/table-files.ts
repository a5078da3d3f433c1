import { createWriteStream } from 'node:fs'
import { once } from 'node:events'
import { finished } from 'node:stream/promises'
import { csvOf, type CsvCell } from '@/lib/core/money/csv'
import type { Column, Row, RowSource, Table, Value } from '../backup/rows'
import { goesAlong } from './left-out'

/** Its mark is at the head of the file only. */
const byteOrderMark = '\uFEFF'
const linesOf = (rows: readonly (readonly CsvCell[])[]): string => csvOf(rows).slice(byteOrderMark.length)

/** The rows of a table as CSV and as JSON, each into its file; some hundred rows are in memory at a time. */
export async function writeTable(
  source: RowSource,
  table: Table,
  paths: { csv: string; json: string },
): Promise<number> {
  const kept = table.columns
    .map((column, at) => ({ column, at }))
    .filter(({ column }) => goesAlong(table.name, column.name))
  const csv = writing(paths.csv)
  const json = writing(paths.json)
  let rows = 0
  await csv.write(byteOrderMark + linesOf([kept.map(({ column }) => column.name)]))
  for await (const some of source.rows(table)) {
    await csv.write(linesOf(some.map((row) => kept.map(({ column, at }) => cellOf(row, column, at)))))
    for (const row of some) {
      const object = Object.fromEntries(kept.map(({ column, at }) => [column.name, jsonOf(row[at] ?? null, column)]))
      await json.write(`${rows++ === 0 ? '[\n' : ',\n'}${JSON.stringify(object)}`)
    }
  }
  await json.write(rows === 0 ? '[]\n' : '\n]\n')
  await Promise.all([csv.end(), json.end()])
  return rows
}

function writing(path: string) {
  const file = createWriteStream(path, { flags: 'wx', mode: 0o600 })
  const done = finished(file)
  done.catch(() => undefined)
  return {
    write: async (text: string): Promise<void> => {
      if (!file.write(text)) await Promise.race([once(file, 'drain'), done])
    },
    end: (): Promise<void> => {
      file.end()
      return done
    },
  }
}

function cellOf(row: Row, column: Column, at: number): CsvCell {
  const value = jsonOf(row[at] ?? null, column)
  if (value === null) return ''
  return typeof value === 'string' ? value : { figure: String(value) }
}

/** As people and programs write it: a moment by ISO 8601, yes or no as true or false. */
function jsonOf(value: Value, { kind }: Column): string | number | boolean | null {
  if (value === null) return null
  if (kind === 'moment') return new Date(value).toISOString()
  return kind === 'boolean' ? value === 1 : value
}
