import { randomUUID } from 'node:crypto'
import { copyFileSync, cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createConnection } from 'node:net'
import { join } from 'node:path'
import { afterEach, describe, inject } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import type { Provider } from '@/lib/data/gate/provider'
import type { PrismaClient } from '@/prisma/generated/sqlite/client'
import { openDatabases } from './open-databases'
import { administer } from './postgres'
import { templateDatabase, type Template } from './template-server'

export type TestDatabase = {
  readonly provider: Provider
  readonly url: string
  /** Its data folder: files of the shop go here. */
  readonly folder: string
  readonly client: PrismaClient
  /** Removes it before the file's tests end; otherwise that happens by itself. */
  readonly close: () => Promise<void>
}

/**
 * A fresh, empty, migrated database and data folder. It is this process's database from now on: `db()`, and so every
 * use case, works on it until another is made.
 */
export const testDatabase = async (provider: Provider = 'sqlite'): Promise<TestDatabase> =>
  openTestDatabase(provider, await freshDatabase(provider))

async function openTestDatabase(provider: Provider, { url, folder, remove }: FreshDatabase): Promise<TestDatabase> {
  process.env.DATABASE_URL = url
  process.env.BRASSTAG_DATA = folder
  const client = await openClient(url)
  const close = async (): Promise<void> => {
    if (!openDatabases.delete(close)) return
    await closeClient(url)
    await remove()
  }
  openDatabases.add(close)
  return { provider, url, folder, client, close }
}

export type Filled<T> = { readonly database: TestDatabase; readonly filled: T }

/**
 * A copy of a shop that is filled once a run: whoever asks first fills it, in either worker, the others copy its database
 * and its files. What `fill` gives is kept as JSON. SQLite only.
 */
export async function filledDatabase<T>(
  name: string,
  fill: (database: TestDatabase) => Promise<T>,
): Promise<Filled<T>> {
  const shelf = join(inject('runFolder'), `filled-${name}`)
  if (!existsSync(shelf) && takes(shelf)) await fillOnce(shelf, fill)
  await isFilled(shelf)
  const folder = join(inject('runFolder'), `test_${randomUUID()}`)
  cpSync(join(shelf, 'data'), folder, { recursive: true })
  const remove = async () => rmSync(folder, { recursive: true, force: true })
  const database = await openTestDatabase('sqlite', { url: `file:${join(folder, 'brasstag.db')}`, folder, remove })
  return { database, filled: JSON.parse(readFileSync(join(shelf, 'filled.json'), 'utf8')) as T }
}

/** True for the one that made the folder. */
function takes(folder: string): boolean {
  try {
    mkdirSync(folder)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
}

async function fillOnce<T>(shelf: string, fill: (database: TestDatabase) => Promise<T>): Promise<void> {
  try {
    const database = await testDatabase()
    const filled = JSON.stringify((await fill(database)) ?? null)
    await closeClient(database.url) // what was written ahead is in the file from here on
    cpSync(database.folder, join(shelf, 'data'), { recursive: true })
    await database.close()
    writeFileSync(join(shelf, 'filled.json'), filled)
  } catch (error) {
    writeFileSync(join(shelf, 'failed'), String(error))
    throw error
  }
}

async function isFilled(shelf: string): Promise<void> {
  while (!existsSync(join(shelf, 'filled.json'))) {
    if (existsSync(join(shelf, 'failed'))) throw new Error(readFileSync(join(shelf, 'failed'), 'utf8'))
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}

export type FreshDatabase = {
  readonly url: string
  readonly folder: string
  readonly remove: () => Promise<void>
}

/** A migrated database alone, with nothing connected to it. */
export const freshDatabase = (provider: Provider): Promise<FreshDatabase> => makeDatabase(provider, { migrated: true })

/** A database with nothing in it at all: not even migrated. `options` go to PostgreSQL's CREATE DATABASE. */
export const emptyDatabase = (provider: Provider, options = ''): Promise<FreshDatabase> =>
  makeDatabase(provider, { migrated: false, options })

async function makeDatabase(
  provider: Provider,
  { migrated, options = '' }: { readonly migrated: boolean; readonly options?: string },
): Promise<FreshDatabase> {
  const name = `test_${randomUUID().replaceAll('-', '')}`
  const folder = join(inject('runFolder'), name)
  mkdirSync(folder)
  const { from } = await template(provider)
  // Tried again: a backup that a test did not wait for may still lay files there.
  const removeFolder = () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  if (provider === 'sqlite') {
    const path = join(folder, 'brasstag.db')
    if (migrated) copyFileSync(from, path)
    return { url: `file:${path}`, folder, remove: async () => removeFolder() }
  }
  const source = migrated ? templateDatabase : 'template0'
  await administer(from, `CREATE DATABASE ${name} TEMPLATE ${source} ENCODING 'UTF8' ${options}`)
  return {
    url: from.replace(/\/postgres$/, `/${name}`),
    folder,
    remove: async () => {
      await administer(from, `DROP DATABASE ${name} WITH (FORCE)`)
      removeFolder()
    },
  }
}

const asked = new Map<Provider, Promise<Template>>()

/** Asked once a process of the run's own server, which makes it once a run. */
function template(provider: Provider): Promise<Template> {
  const known = asked.get(provider)
  if (known) return known
  const asking = askFor(provider)
  asked.set(provider, asking)
  return asking
}

const askFor = (provider: Provider): Promise<Template> =>
  new Promise((resolve, reject) => {
    const socket = createConnection(inject('templateSocket'), () => socket.write(`${provider}\n`))
    let answer = ''
    socket.on('error', reject)
    socket.on('data', (piece) => (answer += String(piece)))
    socket.on('end', () => {
      const said = JSON.parse(answer) as Template | { readonly failed: string }
      if ('failed' in said) reject(new Error(said.failed))
      else resolve(said)
    })
  })

export type Open = () => Promise<TestDatabase>

/** The same tests on both databases. `open` gives each test its own; it is removed when the test ends. */
export const describeOnBoth = (name: string, tests: (open: Open, provider: Provider) => void): void =>
  describeOn(['sqlite', 'postgresql'], name, tests)

/** As `describeOnBoth`, where another test holds that PostgreSQL does the same. */
export const describeOnSqlite = (name: string, tests: (open: Open, provider: Provider) => void): void =>
  describeOn(['sqlite'], name, tests)

function describeOn(
  providers: readonly Provider[],
  name: string,
  tests: (open: Open, provider: Provider) => void,
): void {
  describe.each(providers)(`${name} (%s)`, (provider) => {
    const mine: TestDatabase[] = []
    afterEach(async () => {
      for (const database of mine.splice(0)) await database.close()
    })
    tests(async () => {
      const database = await testDatabase(provider)
      mine.push(database)
      return database
    }, provider)
  })
}
