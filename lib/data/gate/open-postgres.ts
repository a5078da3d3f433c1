import { PrismaPg } from '@prisma/adapter-pg'
import type { PrismaClient } from '@/prisma/generated/postgresql/client'

/** The PostgreSQL client; loaded only where a shop uses it. */
export async function openPostgres(url: string): Promise<PrismaClient> {
  const generated = await import('@/prisma/generated/postgresql/client')
  const client = new generated.PrismaClient({ adapter: new PrismaPg(url) })
  try {
    await refuseOtherCollation(client)
    return client
  } catch (error) {
    await client.$disconnect()
    throw error
  }
}

/** Lists must come in the same order on both databases, so text is compared by code point. */
async function refuseOtherCollation(client: PrismaClient): Promise<void> {
  const rows = await client.$queryRawUnsafe<{ collation: string }[]>(
    `SELECT datcollate AS collation FROM pg_database WHERE datname = current_database()`,
  )
  const collation = rows[0]?.collation ?? ''
  if (!/^(C|POSIX|C\.UTF-?8)$/i.test(collation)) {
    throw new Error(
      `The PostgreSQL database sorts by ${collation || 'an unknown collation'}; Brasstag needs C. Make it with: ` +
        `CREATE DATABASE brasstag TEMPLATE template0 ENCODING 'UTF8' LC_COLLATE 'C' LC_CTYPE 'C'`,
    )
  }
}
