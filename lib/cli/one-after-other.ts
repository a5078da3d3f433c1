import { Client } from 'pg'
import { providerOf } from '@/lib/data/gate/provider'

/** Any numbers, the same in every process; not the one that a shop's transactions take. */
const locks = { start: 20_261_130, migrate: 20_261_131 } as const

/**
 * Of processes that do this on one PostgreSQL at once, each waits for the one before it: the second finds everything done. The
 * lock is the connection's, so it ends with its process. A SQLite file is open to one process anyway.
 */
export async function oneAfterOther<T>(
  url: string,
  what: keyof typeof locks,
  work: () => Promise<T>,
  say: (words: string) => void = () => undefined,
): Promise<T> {
  if (providerOf(url) === 'sqlite') return work()
  const client = new Client({ connectionString: url, keepAlive: true })
  await client.connect()
  try {
    const { rows } = await client.query<{ mine: boolean }>('SELECT pg_try_advisory_lock($1) AS mine', [locks[what]])
    if (!rows[0]?.mine) {
      say('• Waiting for another Brasstag that is starting on this database …')
      await client.query('SELECT pg_advisory_lock($1)', [locks[what]])
    }
    return await work()
  } finally {
    await client.end()
  }
}
