import { expect, it, vi } from 'vitest'
import { migrate } from '@/lib/cli/migrate'
import { applyMigrations } from '@/lib/cli/schema-engine'
import { queuePlace } from '@/lib/core/route/station-queue'
import type { StepState, Whereabouts } from '@/lib/core/route/types'
import { filePathOf, type Provider } from '@/lib/data/gate/provider'
import { emptyDatabase } from '../setup/database'
import { filledDemo } from '../setup/demo-shop'
import { plainSqlite } from '../setup/plain-sqlite'
import { withPostgres } from '../setup/postgres'

// A demo is filled, or a PostgreSQL started.
vi.setConfig({ testTimeout: 300_000 })

const newest = vi.hoisted(() => ({ name: '' }))
vi.mock('@/lib/cli/migration-files', async (original) => {
  const actual = await original<typeof import('@/lib/cli/migration-files')>()
  const upTo = (provider: Provider) => actual.readMigrations(provider).filter(({ name }) => name <= newest.name)
  return { ...actual, readMigrations: upTo }
})

/** A database as it was before endings were searched: 0010 makes them for what is there. */
async function databaseOf0009(provider: Provider) {
  const database = await emptyDatabase(provider)
  newest.name = '0009_zzz'
  expect((await applyMigrations(database.url)).at(-1)).toMatch(/^0009_/)
  return database
}

function bringUpToDate(url: string): Promise<string[]> {
  newest.name = '9999'
  return migrate(url)
}

type Row = Readonly<Record<string, unknown>>
const both = {
  sqlite: {
    run: async (url: string, sql: string) =>
      plainSqlite(url, (file) => void file.exec(`PRAGMA foreign_keys = OFF; ${sql}`)),
    rows: async (url: string, sql: string) => plainSqlite(url, (file) => file.prepare(sql).all() as Row[]),
  },
  postgresql: {
    run: (url: string, sql: string) =>
      withPostgres(url, async (client) => void (await client.query(`SET session_replication_role = replica; ${sql}`))),
    rows: (url: string, sql: string) => withPostgres(url, async (client) => (await client.query<Row>(sql)).rows),
  },
} as const

const day = `'2026-03-02T08:00:00Z'`
const customer = (id: string, name: string, digits: string, blankedAt = 'NULL') => `
  INSERT INTO "Customer" ("id", "createdAt") VALUES ('${id}', ${day});
  INSERT INTO "CustomerContact" VALUES ('${id}', '${name}', '${name}', '${digits}', '${digits}', '', '', ${blankedAt});`
const head = (id: string, marks: string) => `
  INSERT INTO "Head" ("id", "stamp", "marks", "marksLower", "material", "chamberForm", "newThicknessText", "note", "createdAt")
  VALUES ('${id}', '', '${marks}', '${marks}', 'iron', 'as-cast', '', '', ${day});`

/** Forty letters, all different from place to place: the ending that begins at each is cut to 32. */
const long = 'abcdefghijklmnopqrstuvwxyz0123456789-+*/'

it.each(['sqlite', 'postgresql'] as const)(
  '%s: every ending of every name, number and mark that was there',
  async (on) => {
    const { url, remove } = await databaseOf0009(on)
    const { run, rows } = both[on]
    await run(url, customer('c1', 'ada böhm', '5550'))
    await run(url, customer('c2', 'gone', '7', day))
    await run(url, customer('c3', 'aa', '') + customer('c4', long, '') + customer('c5', '', long))
    await run(url, head('h1', 'ab') + head('h2', 'ab') + head('h3', '') + head('h4', long))
    expect((await bringUpToDate(url))[0]).toMatch(/^0010_/)

    const customers = await rows(url, `SELECT "customerId" AS id, "suffix" FROM "CustomerSuffix"`)
    const ofOne = (id: string) => customers.filter((row) => row.id === id).map(({ suffix }) => suffix)
    expect(ofOne('c1').sort()).toEqual(
      ['ada böhm', 'da böhm', 'a böhm', ' böhm', 'böhm', 'öhm', 'hm', 'm', '5550', '550', '50', '0'].sort(),
    )
    expect(ofOne('c2')).toEqual([])
    expect(ofOne('c3').sort()).toEqual(['a', 'aa'])

    const heads = await rows(url, `SELECT "headId" AS id, "suffix" FROM "HeadSuffix"`)
    const short = heads.filter((row) => row.id !== 'h4').map(({ id, suffix }) => `${String(id)} ${String(suffix)}`)
    expect(short.sort()).toEqual(['h1 ab', 'h1 b', 'h2 ab', 'h2 b'])
    const endings = [...long].map((_, at) => long.slice(at, at + 32))
    expect(ofOne('c4').sort()).toEqual(endings.toSorted())
    expect(ofOne('c5').sort()).toEqual(endings.toSorted())
    expect(heads.flatMap((row) => (row.id === 'h4' ? [row.suffix] : [])).sort()).toEqual(endings.sort())
    await remove()
  },
)

const everywhere: readonly Whereabouts[] = [
  ...(['expected', 'on order', 'in house', 'waiting for parts', 'waiting for an answer', 'held', 'away'] as const),
  ...(['finished', 'released', 'handed over', 'returned as is', 'scrapped'] as const),
]
const states: readonly StepState[] = ['to do', 'ready', 'started', 'do again', 'done', 'waived', 'not needed']
const waits = [[], [{ code: 'plan' }]] as const

it.each(['sqlite', 'postgresql'] as const)('%s: every step stands where its queue has it', async (on) => {
  const { url, remove } = await databaseOf0009(on)
  const { run, rows } = both[on]
  const cases = everywhere.flatMap((where) =>
    states.flatMap((state) => waits.map((waitsFor) => ({ where, state, waitsFor, waits: waitsFor.length }))),
  )
  const step = ({ where, state, waitsFor, waits }: (typeof cases)[number]) => `
    INSERT INTO "RouteStep"
      ("visitId", "stepId", "occurrence", "orderKey", "place", "label", "station", "state", "detail")
    VALUES ('${where}', '${state}', '${waits}', '', 1, '', 'deck-mill', '${state}',
      '${JSON.stringify({ shape: 2, waitsFor })}');`
  const place = (where: Whereabouts) => `INSERT INTO "VisitPlace" VALUES ('${where}', '${where}', ${day});`
  await run(url, everywhere.map(place).join('') + cases.map(step).join(''))
  await bringUpToDate(url)

  const found = await rows(url, `SELECT "visitId", "state", "occurrence", "queue" FROM "RouteStep"`)
  const said = found.map((row) => Object.values(row).join(', ')).sort()
  expect(said).toEqual(
    cases.map(({ where, waits, ...one }) => [where, one.state, waits, queuePlace({ ...one }, where)].join(', ')).sort(),
  )
  await remove()
})

/** Fills the tables of a file from those of another, as far as it has their columns; what is gone since is 0 or ''. */
function fillFrom(url: string, other: string): void {
  plainSqlite(url, (file) => {
    file.exec(`PRAGMA foreign_keys = OFF; ATTACH '${filePathOf(other)}' AS "filled"`)
    const namesOf = (sql: string) => file.prepare(sql).pluck().all() as string[]
    const tables = namesOf(`SELECT name FROM main.sqlite_master WHERE type = 'table' AND name GLOB '[A-Z]*'`)
    for (const table of tables) {
      const there = namesOf(`SELECT name FROM pragma_table_info('${table}', 'filled')`)
      const columns = namesOf(`SELECT name FROM pragma_table_info('${table}', 'main')`).filter((one) =>
        there.includes(one),
      )
      const gone = file
        .prepare(
          `SELECT name, type FROM pragma_table_info('${table}', 'main') WHERE "notnull" = 1 AND dflt_value IS NULL`,
        )
        .all()
        .map((column) => column as { readonly name: string; readonly type: string })
        .filter(({ name }) => !there.includes(name))
      const names = [...columns, ...gone.map(({ name }) => name)].map((column) => `"${column}"`).join(', ')
      const values = [
        ...columns.map((column) => `"${column}"`),
        ...gone.map(({ type }) => (type === 'TEXT' ? `''` : 0)),
      ]
      file.exec(`INSERT INTO main."${table}" (${names}) SELECT ${values.join(', ')} FROM "filled"."${table}"`)
    }
  })
}

it('a shop that was filled before finds and queues as if it had been so from the first day', async () => {
  const demo = await filledDemo()
  const { url, remove } = await databaseOf0009('sqlite')
  fillFrom(url, demo.url)
  await bringUpToDate(url)
  for (const [table, columns] of [
    ['CustomerSuffix', '"customerId", "suffix"'],
    ['HeadSuffix', '"headId", "suffix"'],
    ['RouteStep', '"visitId", "stepId", "occurrence", "orderKey", "queue"'],
  ] as const) {
    const sql = `SELECT ${columns} FROM "${table}" ORDER BY ${columns}`
    const [made, kept] = [await both.sqlite.rows(url, sql), await both.sqlite.rows(demo.url, sql)]
    expect(kept.length, table).toBeGreaterThan(20)
    expect(made, table).toEqual(kept)
  }
  await remove()
})
