import { createHash } from 'node:crypto'

/**
 * A value as both databases have it in common: moments as milliseconds since 1970, yes and no as 1 and 0. Doubles and whole
 * numbers are never turned into text on their way, and come back to the last bit.
 */
export type Value = string | number | null
export type Row = readonly Value[]

export type Kind = 'text' | 'number' | 'boolean' | 'moment'
export type Column = { readonly name: string; readonly kind: Kind }
/** Columns by name, so that the order in which a database keeps them does not matter. */
export type Table = { readonly name: string; readonly columns: readonly Column[]; readonly key: readonly string[] }

/** Where rows are read from: all of it of one moment, in the order of the key. */
export type RowSource = {
  readonly tables: () => Promise<readonly Table[]>
  readonly rows: (table: Table) => AsyncIterable<readonly Row[]>
}

/** Where rows go: all of them, or none. */
export type RowTarget = {
  readonly tables: () => Promise<readonly Table[]>
  readonly add: (table: Table, rows: readonly Row[]) => Promise<void>
}

export const rowsAtOnce = 500

/** How many rows a table has, and a hash over all that they say, in the order of its key. */
export type Fingerprint = { readonly rows: number; readonly sha256: string }

export class Fingerprinting {
  #rows = 0
  readonly #hash = createHash('sha256')

  take(rows: readonly Row[]): void {
    this.#rows += rows.length
    for (const row of rows) this.#hash.update(`${JSON.stringify(row)}\n`)
  }

  end = (): Fingerprint => ({ rows: this.#rows, sha256: this.#hash.digest('hex') })
}

export type Fingerprints = Readonly<Record<string, Fingerprint>>

export async function fingerprintsOf(source: RowSource): Promise<Fingerprints> {
  const found: Record<string, Fingerprint> = {}
  for (const table of await source.tables()) {
    const print = new Fingerprinting()
    for await (const rows of source.rows(table)) print.take(rows)
    found[table.name] = print.end()
  }
  return found
}

/** Every row of every table; the fingerprints of what was read. The target must have the same tables and columns. */
export async function copyRows(
  source: RowSource,
  target: RowTarget,
  say: (table: string) => void = () => undefined,
): Promise<Fingerprints> {
  const there = new Map((await target.tables()).map((table) => [table.name, table]))
  const found: Record<string, Fingerprint> = {}
  const tables = await source.tables()
  refuseOthers(tables, there)
  for (const table of tables) {
    say(table.name)
    const print = new Fingerprinting()
    for await (const rows of source.rows(table)) {
      print.take(rows)
      await target.add(table, rows)
    }
    found[table.name] = print.end()
  }
  return found
}

const shapeOf = ({ columns, key }: Table): string =>
  JSON.stringify([columns.map(({ name, kind }) => [name, kind]), [...key].sort()])

function refuseOthers(tables: readonly Table[], there: ReadonlyMap<string, Table>): void {
  const other = tables.find((table) => {
    const match = there.get(table.name)
    return !match || shapeOf(match) !== shapeOf(table)
  })
  if (other) throw new Error(`the table ${other.name} is not the same in the two databases`)
  if (there.size !== tables.length) throw new Error('the two databases do not have the same tables')
}

/** The tables whose rows differ. */
export const differing = (one: Fingerprints, other: Fingerprints): string[] =>
  [...new Set([...Object.keys(one), ...Object.keys(other)])].filter(
    (name) => one[name]?.sha256 !== other[name]?.sha256 || one[name]?.rows !== other[name]?.rows,
  )

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`
export const byName = (a: { readonly name: string }, b: { readonly name: string }): number => (a.name < b.name ? -1 : 1)
