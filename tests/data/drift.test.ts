import { describe, expect, it } from 'vitest'
import { migrate } from '@/lib/cli/migrate'
import { postgresqlSchema } from '@/lib/cli/generate.mjs'
import { driftOfSqlite, schemaChange, schemaOfMigrations } from '@/lib/cli/schema-engine'
import { expectedTriggers, triggerScript } from '@/lib/data/gate/triggers'
import { emptyDatabase, freshDatabase } from '../setup/database'
import { plainSqlite } from '../setup/plain-sqlite'
import { withPostgres } from '../setup/postgres'

describe('the migrations of SQLite', () => {
  it('end where the schema is', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    expect(await driftOfSqlite(url)).toBe('')
    await remove()
  })

  it('are compared for real: a column that the schema does not know is seen', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    plainSqlite(url, (file) => file.exec(`ALTER TABLE "Head" ADD COLUMN "stray" TEXT`))
    expect(await driftOfSqlite(url)).toContain('"Head"')
    await remove()
  })

  it('apply once: a second time changes nothing', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    expect(await migrate(url)).toEqual([])
    await remove()
  })
})

/** Everything that the catalogue says about the tables: columns, keys, sequences, indexes but those that Find looks in. */
const catalogue = `
  SELECT 'column' AS what, table_name || '.' || column_name AS name,
    concat_ws(' ', data_type, datetime_precision, is_nullable, column_default) AS detail
  FROM information_schema.columns WHERE table_schema = current_schema() AND table_name <> '_prisma_migrations'
  UNION ALL
  SELECT 'constraint', conrelid::regclass || '.' || conname, pg_get_constraintdef(oid)
  FROM pg_constraint WHERE connamespace = current_schema()::regnamespace
    AND conrelid <> COALESCE(to_regclass('_prisma_migrations'), 0) AND contype <> 'n'
  UNION ALL
  SELECT 'index', indexname, indexdef FROM pg_indexes
  WHERE schemaname = current_schema() AND tablename <> '_prisma_migrations' AND indexname NOT LIKE '%_find'
  ORDER BY 1, 2`

describe('the migrations of PostgreSQL', () => {
  it('end where a script made fresh from the schema ends', async () => {
    const migrated = await freshDatabase('postgresql')
    const fresh = await emptyDatabase('postgresql')
    const script = await schemaChange('postgresql', '')
    await withPostgres(fresh.url, (client) => client.query(script))
    const [left, right] = await Promise.all(
      [migrated, fresh].map(({ url }) => withPostgres(url, async (client) => (await client.query(catalogue)).rows)),
    )
    expect(left?.length).toBeGreaterThan(100)
    expect(left).toEqual(right)

    await withPostgres(fresh.url, (client) => client.query(`ALTER TABLE "Head" ADD COLUMN "stray" TEXT`))
    const strayed = await withPostgres(fresh.url, async (client) => (await client.query(catalogue)).rows)
    expect(strayed).not.toEqual(left)
    await migrated.remove()
    await fresh.remove()
  })
})

describe('the migrations read back', () => {
  const textFor = (provider: 'sqlite' | 'postgresql', text: string) =>
    provider === 'sqlite' ? text : postgresqlSchema(text)

  it('are the schema, for both databases; what the schema has more is the next migration', async () => {
    const text = await schemaOfMigrations()
    // As the migrations would end had nobody ever added where a head is kept.
    const before = text.replace(/^\s+rackPlace .*\n/m, '')
    expect(before).not.toBe(text)
    for (const provider of ['sqlite', 'postgresql'] as const) {
      expect([provider, await schemaChange(provider, textFor(provider, text))]).toEqual([provider, ''])
      expect(await schemaChange(provider, textFor(provider, before))).toMatch(/Visit"[^]*"rackPlace" TEXT NOT NULL/)
    }
  })
})

describe.each(['sqlite', 'postgresql'] as const)('the triggers of %s', (provider) => {
  it('are those that are asserted at start, by name', () => {
    const named = [...triggerScript(provider).matchAll(/CREATE (?:OR REPLACE )?TRIGGER "(\w+)"/g)].map(
      (match) => match[1],
    )
    expect(named.sort()).toEqual(expectedTriggers(provider))
  })

  it('are put back by the next migration run when a table was rebuilt without them', async () => {
    const { url, remove } = await freshDatabase(provider)
    const drop = `DROP TRIGGER "Reading_no_update"`
    if (provider === 'sqlite') plainSqlite(url, (file) => file.exec(`${drop};`))
    else await withPostgres(url, (client) => client.query(`${drop} ON "Reading"`))
    await migrate(url)
    const names =
      provider === 'sqlite'
        ? plainSqlite(url, (file) => file.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all())
        : await withPostgres(
            url,
            async (client) => (await client.query(`SELECT tgname AS name FROM pg_trigger WHERE NOT tgisinternal`)).rows,
          )
    expect((names as { name: string }[]).map((row) => row.name).sort()).toEqual(expectedTriggers(provider))
    await remove()
  })
})
