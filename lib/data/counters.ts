import 'server-only'
import type { Tx } from './db'

/** The next number of a counter, taken in the caller's transaction so that no number is lost or given twice. */
export async function nextNumber(tx: Tx, name: string, first = 1): Promise<number> {
  const row = await tx.counter.upsert({
    where: { name },
    create: { name, value: first },
    update: { value: { increment: 1 } },
  })
  return row.value
}
