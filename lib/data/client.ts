import { PrismaClient } from '@/prisma/generated/sqlite/client'
import { databaseUrlOfProcess } from '@/lib/env'
import { openPostgres } from './gate/open-postgres'
import { providerOf, type Provider } from './gate/provider'
import { GatedSqlite } from './gate/sqlite-gate'
import { assertTriggers } from './gate/triggers'

/** `file`: what a SQLite client opens its file with. */
type Opened = { readonly client: PrismaClient; readonly file: GatedSqlite | null }
/** `idle`: SQLite clients whose file was closed. */
type Clients = { readonly open: Map<string, Promise<Opened>>; readonly idle: Opened[] }

// On globalThis, because the server may load this module more than once while there must be one connection and one gate.
const home = globalThis as typeof globalThis & { brasstagClients?: Clients }
const { open, idle }: Clients = (home.brasstagClients ??= { open: new Map(), idle: [] })

/** The client of a database; opened once in a process, and only handed out when the database is fit to be used. */
export async function openClient(url: string = databaseUrlOfProcess()): Promise<PrismaClient> {
  const known = open.get(url)
  if (known) return (await known).client
  const opening = connectAndCheck(url)
  open.set(url, opening)
  opening.catch(() => open.delete(url))
  return (await opening).client
}

export async function closeClient(url: string = databaseUrlOfProcess()): Promise<void> {
  const known = open.get(url)
  open.delete(url)
  const opened = await known
  await opened?.client.$disconnect()
  if (opened?.file) idle.push(opened)
}

async function connectAndCheck(url: string): Promise<Opened> {
  const provider = providerOf(url)
  const opened = await clientFor(provider, url)
  const { client } = opened
  try {
    await client.$connect()
    await assertTriggers(provider, (sql) => client.$queryRawUnsafe(sql))
    return opened
  } catch (error) {
    await client.$disconnect()
    throw error
  }
}

async function clientFor(provider: Provider, url: string): Promise<Opened> {
  if (provider === 'sqlite') return sqliteClient(url)
  // The one place that crosses over: both clients are generated from the same models, so what the SQLite client's
  // types allow, the PostgreSQL client does too. Their types are nominally different, so the compiler cannot see it.
  return { client: (await openPostgres(url)) as unknown as PrismaClient, file: null }
}

/** To make a client takes some five times as long as to open a file: one whose file was closed opens the next. */
function sqliteClient(url: string): Opened {
  const known = idle.pop()
  if (known?.file) {
    known.file.url = url
    return known
  }
  const file = new GatedSqlite(url)
  return { client: new PrismaClient({ adapter: file }), file }
}
