import { expect, it, vi } from 'vitest'
import { migrate } from '@/lib/cli/migrate'
import { applyMigrations } from '@/lib/cli/schema-engine'
import { queuePlace } from '@/lib/core/route/station-queue'
import type { StepState, Whereabouts } from '@/lib/core/route/types'
import { filePathOf, type Provider } from '@/lib/data/gate/provider'
import { emptyDatabase } from '../../setup/database'
import { filledDemo } from '../../setup/demo-shop'
import { plainSqlite } from '../../setup/plain-sqlite'
import { withPostgres } from '../../setup/postgres'

// A demo is filled, or a PostgreSQL started.
vi.setConfig({ testTimeout: 300_000 })

const newest = vi.hoisted(() => ({ name: '' }))
vi.mock('@/lib/cli/migration-files', async (original) => {
  const actual = await original<typeof import('@/lib/cli/migration-files')>()
  const upTo = (provider: Provider) => actual.readMigrations(provider).filter(({ name }) => name <= newest.name)
  return { ...actual, readMigrations: upTo }
})

/** A database as it was before anything was kept to be found by, and before a queue was. */
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

const casting = (id: string, name: string) => `
  INSERT INTO "CastingRecord" ("id", "name", "nameLower", "material", "chamberCount", "chamberShape", "deepEdge", "note", "createdAt")
  VALUES ('${id}', '${name}', '', 'iron', 4, 'closed', 'exhaust', '', ${day});`
const shop = `
  INSERT INTO "Shop" ("id", "mode", "name", "address", "phone", "timeZone", "locale", "currency", "currencyExponent", "paper", "createdAt")
  VALUES (1, 'shop', '', '', '', 'Europe/London', 'en-GB', 'GBP', 2, 'a4', ${day});`

it.each(['sqlite', 'postgresql'] as const)(
  '%s: customers and heads that were there get the text that finds them, and phones are read',
  async (on) => {
    const { url, remove } = await databaseOf0009(on)
    const { run, rows } = both[on]
    await run(url, shop + customer('c1', 'Ada  Böhm', '020 7946 0123') + customer('c2', 'gone', '7', day))
    await run(url, customer('c3', 'Aa', 'call my wife, 555-0199 after 6') + customer('c4', '', ''))
    await run(url, casting('k1', 'Halden 4') + head('h1', 'HX-22') + head('h2', ''))
    await run(url, `UPDATE "Head" SET "castingId" = 'k1' WHERE "id" = 'h2'`)
    await bringUpToDate(url)

    const texts = await rows(url, `SELECT "customerId" AS id, "text" FROM "CustomerText" ORDER BY 1`)
    expect(texts).toEqual([
      { id: 'c1', text: ' ada bohm adabohm boehm adaboehm 02079460123 442079460123' },
      { id: 'c3', text: ' aa 5550199' },
      { id: 'c4', text: '' },
    ])
    const phones = `SELECT "customerId" AS id, "nameLower" AS name, "phone", "phoneE164" AS e164, "phoneDigits" AS digits`
    expect(await rows(url, `${phones} FROM "CustomerContact" WHERE "customerId" IN ('c1', 'c3') ORDER BY 1`)).toEqual([
      { id: 'c1', name: 'ada bohm', phone: '020 7946 0123', e164: '+442079460123', digits: '02079460123' },
      { id: 'c3', name: 'aa', phone: 'call my wife, 555-0199 after 6', e164: '', digits: '5550199' },
    ])
    expect(await rows(url, `SELECT "headId" AS id, "text" FROM "HeadText" ORDER BY 1`)).toEqual([
      { id: 'h1', text: ' hx 22 hx22' },
      { id: 'h2', text: ' halden 4 halden4' },
    ])

    // Deleted texts are made anew by the next start: so a later migration can change what they say.
    await run(url, `DELETE FROM "CustomerText" WHERE "customerId" = 'c1'`)
    expect(await migrate(url)).toEqual([])
    expect(await rows(url, `SELECT "text" FROM "CustomerText" WHERE "customerId" = 'c1'`)).toEqual([
      { text: texts[0]?.text },
    ])
    await remove()
  },
)

const everywhere: readonly Whereabouts[] = [
  ...(['expected', 'on order', 'in house', 'waiting for parts', 'waiting for an answer', 'held', 'away'] as const),
  ...(['finished', 'released', 'handed over', 'returned as is', 'scrapped'] as const),
]
const states: readonly StepState[] = ['to do', 'ready', 'started', 'do again', 'done', 'waived', 'not needed']
const waits = [[], [{ code: 'plan' }]] as const

it.each(['sqlite', 'postgresql'] as const)(
  '%s: every step stands where its queue has it, and every head where it is',
  async (on) => {
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
    const taken = (visitId: string) => `INSERT INTO "HandOver" VALUES ('${visitId}', 'Ada', '', '', '', ${day}, 'p');`
    const unworked = (visitId: string) => `INSERT INTO "VisitPlace" VALUES ('${visitId}', 'returned as is', ${day});`
    await run(url, everywhere.map(place).join('') + cases.map(step).join(''))
    await run(url, unworked('lies here') + unworked('was taken') + taken('was taken') + taken('handed over'))
    await bringUpToDate(url)

    const found = await rows(url, `SELECT "visitId", "state", "occurrence", "queue" FROM "RouteStep"`)
    const said = found.map((row) => Object.values(row).join(', ')).sort()
    expect(said).toEqual(
      cases
        .map(({ where, waits, ...one }) => [where, one.state, waits, queuePlace({ ...one }, where)].join(', '))
        .sort(),
    )
    const places = `SELECT "visitId", "whereabouts" FROM "VisitPlace" WHERE "visitId" IN`
    expect(await rows(url, `${places} ('lies here', 'was taken', 'returned as is', 'scrapped') ORDER BY 1`)).toEqual([
      { visitId: 'lies here', whereabouts: 'returned as is' },
      { visitId: 'returned as is', whereabouts: 'returned as is' },
      { visitId: 'scrapped', whereabouts: 'scrapped' },
      { visitId: 'was taken', whereabouts: 'handed over' },
    ])
    await remove()
  },
)

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
    ['CustomerText', '"customerId", "text"'],
    ['CustomerContact', '"customerId", "nameLower", "phoneE164", "phoneDigits"'],
    ['HeadText', '"headId", "text"'],
    ['RouteStep', '"visitId", "stepId", "occurrence", "orderKey", "queue"'],
  ] as const) {
    const sql = `SELECT ${columns} FROM "${table}" ORDER BY ${columns}`
    const [made, kept] = [await both.sqlite.rows(url, sql), await both.sqlite.rows(demo.url, sql)]
    expect(kept.length, table).toBeGreaterThan(20)
    expect(made, table).toEqual(kept)
  }
  await remove()
})
