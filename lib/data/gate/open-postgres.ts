import type { PrismaClient } from '@/prisma/generated/postgresql/client'
import { GatedPostgres } from './postgres-gate'

/** The PostgreSQL client; loaded only where a shop uses it. */
export async function openPostgres(url: string): Promise<PrismaClient> {
  const generated = await import('@/prisma/generated/postgresql/client')
  const client = new generated.PrismaClient({ adapter: new GatedPostgres(url) })
  try {
    await refuseOtherCollation(client)
    return client
  } catch (error) {
    await client.$disconnect()
    throw error
  }
}

/** Lists must come in the same order on both databases, so text is compared by code point: capitals first. */
async function refuseOtherCollation(client: PrismaClient): Promise<void> {
  const rows = await client.$queryRawUnsafe<{ byCodePoint: boolean }[]>(
    `SELECT ('B'::text < 'a'::text AND 'z'::text < 'é'::text) AS "byCodePoint"`,
  )
  if (!rows[0]?.byCodePoint) {
    throw new Error(
      'The PostgreSQL database does not sort by code point, as Brasstag needs. Make it with: ' +
        `CREATE DATABASE brasstag TEMPLATE template0 ENCODING 'UTF8' LC_COLLATE 'C' LC_CTYPE 'C'`,
    )
  }
}
