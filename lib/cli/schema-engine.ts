import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import { PrismaPg } from '@prisma/adapter-pg'
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import * as engineModule from '@prisma/schema-engine-wasm/schema_engine_bg'
import { findIndexOf, textTables } from '@/lib/data/gate/find-index'
import { providerOf, type Provider } from '@/lib/data/gate/provider'
import { GatedSqlite } from '@/lib/data/gate/sqlite-gate'
import { rowsIfThere } from './connection'
import { migrationsFolder, readMigrations, readSchema } from './migration-files'

/** SQLite keeps each search index in tables of its own, which no model is of: FTS5's. */
const ofIndex = ['', '_config', '_content', '_data', '_docsize', '_idx']
const externalTables = textTables.flatMap((table) => ofIndex.map((end) => `${findIndexOf(table)}${end}`))
const filters = { externalTables, externalEnums: [] }

type Glue = typeof engineModule & { readonly __wbg_set_wasm: (exports: WebAssembly.Exports) => void }

let started = false

/** The engine comes as WebAssembly in an npm package, so migrating downloads nothing. */
function startEngine(): void {
  if (started) return
  const glue = engineModule as Glue
  const gluePath = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  const code = new WebAssembly.Module(readFileSync(gluePath.replace(/\.js$/, '.wasm')))
  const imports = { './schema_engine_bg.js': glue as unknown as WebAssembly.ModuleImports }
  const instance = new WebAssembly.Instance(code, imports)
  glue.__wbg_set_wasm(instance.exports)
  const begin = instance.exports.__wbindgen_start
  if (typeof begin === 'function') begin()
  started = true
}

/** Keeps what the engine connected, because the engine itself never disconnects. */
class Connections implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider
  readonly adapterName
  readonly #opened: SqlDriverAdapter[] = []

  constructor(private readonly factory: SqlMigrationAwareDriverAdapterFactory) {
    this.provider = factory.provider
    this.adapterName = factory.adapterName
  }

  async connect(): Promise<SqlDriverAdapter> {
    return this.#keep(await this.factory.connect())
  }

  async connectToShadowDb(): Promise<SqlDriverAdapter> {
    return this.#keep(await this.factory.connectToShadowDb())
  }

  #keep(connection: SqlDriverAdapter): SqlDriverAdapter {
    this.#opened.push(connection)
    return connection
  }

  async close(): Promise<void> {
    await Promise.all(this.#opened.map((connection) => connection.dispose()))
  }
}

async function withEngine<T>(
  provider: Provider,
  factory: SqlMigrationAwareDriverAdapterFactory,
  work: (engine: engineModule.SchemaEngine, connections: Connections) => Promise<T>,
): Promise<T> {
  startEngine()
  const connections = new Connections(factory)
  const schema = readSchema(provider)
  let engine: engineModule.SchemaEngine | undefined
  try {
    const bound = bindMigrationAwareSqlAdapterFactory(connections)
    engine = await engineModule.SchemaEngine.new({ datamodels: [['schema.prisma', schema]] }, () => undefined, bound)
    return await work(engine, connections)
  } finally {
    engine?.free()
    await connections.close()
  }
}

const factoryFor = (url: string): SqlMigrationAwareDriverAdapterFactory =>
  providerOf(url) === 'sqlite' ? new GatedSqlite(url) : new PrismaPg(url)

/** Applies what is not applied yet, up to the one that is named, and returns the names of what was. */
export function applyMigrations(url: string, upTo?: string): Promise<string[]> {
  const provider = providerOf(url)
  return withEngine(provider, factoryFor(url), async (engine) => {
    const migrationsList = {
      baseDir: migrationsFolder(provider),
      lockfile: { path: 'migration_lock.toml', content: `provider = "${provider}"\n` },
      shadowDbInitScript: '',
      migrationDirectories: readMigrations(provider)
        .filter(({ name }) => upTo === undefined || name <= upTo)
        .map(({ name, sql }) => ({
          path: name,
          migrationFile: { path: 'migration.sql', content: { tag: 'ok' as const, value: sql } },
        })),
    }
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters })
    return appliedMigrationNames
  })
}

type DiffTarget = Parameters<engineModule.SchemaEngine['diff']>[0]['from']

const modelsOf = (provider: Provider, text = readSchema(provider)): DiffTarget => ({
  tag: 'schemaDatamodel',
  files: [{ path: 'schema.prisma', content: text }],
})

async function diff(engine: engineModule.SchemaEngine, from: DiffTarget, to: DiffTarget): Promise<string> {
  const result = await engine.diff({
    from,
    to,
    script: true,
    exitCode: true,
    filters,
  })
  return result.exitCode === 0 ? '' : (result.stdout ?? '')
}

/** SQL that takes a database made from the schema text `from` ('' for an empty one) to the schema as it is now. */
export function schemaChange(provider: Provider, from: string): Promise<string> {
  const before: DiffTarget = from === '' ? { tag: 'empty' } : modelsOf(provider, from)
  return withEngine('sqlite', offline(), (engine) => diff(engine, before, modelsOf(provider)))
}

/** SQL that a live SQLite file would need to be as the schema says: '' when nothing has drifted. */
export function driftOfSqlite(url: string): Promise<string> {
  const files = [{ path: 'schema.prisma', content: readSchema('sqlite') }]
  const live: DiffTarget = { tag: 'schemaDatasource', files, configDir: '.' }
  return withEngine('sqlite', new GatedSqlite(url), (engine) => diff(engine, live, modelsOf('sqlite')))
}

/**
 * The schema that the migrations so far end with, read back from a SQLite database that they were applied to; '' when there
 * are none. One text stands for both providers, as the schema itself does.
 */
export async function schemaOfMigrations(): Promise<string> {
  if (readMigrations('sqlite').length === 0) return ''
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-migrations-'))
  const url = `file:${join(folder, 'replayed.db')}`
  try {
    await applyMigrations(url)
    const made = await rowsIfThere(url, `SELECT name, sql FROM sqlite_master WHERE type = 'table'`)
    const files = [{ path: 'schema.prisma', content: headOf(readSchema('sqlite')) }]
    const asked = { schema: { files }, baseDirectoryPath: '.', force: true, compositeTypeDepth: 0, namespaces: null }
    const read = await withEngine('sqlite', new GatedSqlite(url), (engine) => engine.introspect(asked))
    const text = read.schema.files.map(({ content }) => content).join('\n')
    return withOwnKeys(text, new Map(made.map(([name, sql]) => [String(name), String(sql)])))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A schema without its models: what is read back stands in their place. */
const headOf = (schema: string): string => schema.slice(0, schema.search(/^model /m))

/**
 * In SQLite every whole-number key counts by itself, meant or not. The migrations of PostgreSQL say which are: theirs is a
 * SERIAL. What another begins with stands where SQLite's table is made.
 */
function withOwnKeys(schema: string, made: ReadonlyMap<string, string>): string {
  const scripts = readMigrations('postgresql').map(({ sql }) => sql)
  const serial = new Set(
    scripts.flatMap((sql) => [...sql.matchAll(/CREATE TABLE "(\w+)" \([^;]*?SERIAL/g)].map(([, name]) => name)),
  )
  return schema.replace(/^model (\w+) \{[^]*?^\}/gm, (model, name: string) => {
    if (serial.has(name)) return model
    const given = /PRIMARY KEY(?: AUTOINCREMENT)? DEFAULT (\d+)/.exec(made.get(name) ?? '')?.[1]
    return model.replace('@default(autoincrement())', given === undefined ? '' : `@default(${given})`)
  })
}

/** Comparing two schema texts needs a connection to be there, of whatever kind, and asks nothing of it. */
const offline = (): SqlMigrationAwareDriverAdapterFactory => new PrismaBetterSqlite3({ url: ':memory:' })

export const migrationPath = (provider: Provider, name: string): string =>
  join(migrationsFolder(provider), name, 'migration.sql')
