import 'server-only'
import { bestEffort } from './best-effort'
import { db } from './db'
import { faultGone } from './fault-seen'

const everyMs = 5000
let lastTry = -Infinity

/**
 * Once something could not be written: whether it goes again, found out by writing one small row. At most every few seconds,
 * since whoever asks may be anybody; false in between.
 */
export async function canWriteAgain(now: Date): Promise<boolean> {
  if (Math.abs(now.getTime() - lastTry) < everyMs) return false
  lastTry = now.getTime()
  const row = { name: 'written after a fault' }
  const client = await db()
  const written = client.counter.upsert({
    where: row,
    create: { ...row, value: 1 },
    update: { value: { increment: 1 } },
  })
  if (!(await bestEffort(written))) return false
  faultGone()
  return true
}
