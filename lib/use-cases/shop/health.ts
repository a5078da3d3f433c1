import { isMachineFault, type MachineFault } from '@/lib/core/faults'
import { db } from '@/lib/data/db'
import { faultSeen, type SeenFault } from '@/lib/data/fault-seen'
import { faultOf } from '@/lib/data/faults'
import { countShops } from '@/lib/data/shop'
import { canWriteAgain } from '@/lib/data/try-write'

/** `ok`: it reads and writes. `read-only`: it reads, and the last write failed. `down`: it does not even read. */
export type Health =
  | { readonly status: 'ok' }
  | { readonly status: 'read-only'; readonly fault: MachineFault }
  | { readonly status: 'down'; readonly fault: MachineFault }

/** Whether the shop's database opens, answers and takes what is written. Says nothing of what is in it. */
export async function health(now: Date): Promise<Health> {
  try {
    await countShops(await db())
  } catch (error) {
    const fault = faultOf(error)
    return { status: 'down', fault: fault !== null && isMachineFault(fault) ? fault : 'cannot-open' }
  }
  const seen = faultSeen()
  if (!seen || (isOver(seen, now) && (await canWriteAgain(now)))) return { status: 'ok' }
  return { status: 'read-only', fault: seen.code }
}

const lastsMs = 60_000

/** One small row may still find room where nothing else does, so a fault stands for a minute unless a change went through. */
const isOver = ({ at }: SeenFault, now: Date): boolean => Math.abs(now.getTime() - at.getTime()) > lastsMs
