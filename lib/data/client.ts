import { PrismaClient } from '@/prisma/generated/sqlite/client'
import { databaseUrlOfProcess } from '@/lib/env'
import { openPostgres } from './gate/open-postgres'
import { providerOf, type Provider } from './gate/provider'
import { GatedSqlite } from './gate/sqlite-gate'
import { assertTriggers } from './gate/triggers'

type Clients = {
  readonly open: Map<string, Promise<PrismaClient>>
  /** What each SQLite client opens its file with. */
  readonly files: WeakMap<PrismaClient, GatedSqlite>
  /** SQLite clients whose file was closed. */
  readonly closed: PrismaClient[]
}

// On globalThis, because the server may load this module more than once while there must be one connection and one gate.
const home = globalThis as typeof globalThis & { brasstagClients?: Clients }
const { open, files, closed }: Clients = (home.brasstagClients ??= none())

function none(): Clients {
  return { open: new Map(), files: new WeakMap(), closed: [] }
}

/** The client of a database; opened once in a process, and only handed out when the database is fit to be used. */
export function openClient(url: string = databaseUrlOfProcess()): Promise<PrismaClient> {
  const known = open.get(url)
  if (known) return known
  const opening = connectAndCheck(url)
  open.set(url, opening)
  opening.catch(() => open.delete(url))
  return opening
}

export async function closeClient(url: string = databaseUrlOfProcess()): Promise<void> {
  const known = open.get(url)
  open.delete(url)
  const client = await known
  await client?.$disconnect()
  if (client && files.has(client)) closed.push(client)
}

async function connectAndCheck(url: string): Promise<PrismaClient> {
  const provider = providerOf(url)
  const client = await clientFor(provider, url)
  try {
    await client.$connect()
    await assertTriggers(provider, (sql) => client.$queryRawUnsafe(sql))
    return client
  } catch (error) {
    await client.$disconnect()
    throw error
  }
}

async function clientFor(provider: Provider, url: string): Promise<PrismaClient> {
  if (provider === 'sqlite') return sqliteClient(url)
  // The one place that crosses over: both clients are generated from the same models, so what the SQLite client's
  // types allow, the PostgreSQL client does too. Their types are nominally different, so the compiler cannot see it.
  return (await openPostgres(url)) as unknown as PrismaClient
}

/** To make a client takes ten times as long as to open a file: one whose file was closed opens the next. */
function sqliteClient(url: string): PrismaClient {
  const known = closed.pop()
  const file = known && files.get(known)
  if (known && file) {
    file.url = url
    return known
  }
  const made = new GatedSqlite(url)
  const client = new PrismaClient({ adapter: made })
  files.set(client, made)
  return client
}
