import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import { PrismaClient } from '@/prisma/generated/sqlite/client'

/** A client on the stock adapter, without the gate: only to show what the gate is for. */
export const stockClient = (url: string): PrismaClient =>
  new PrismaClient({ adapter: new PrismaBetterSqlite3({ url }) })
