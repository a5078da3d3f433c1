import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { stationCounts } from '@/lib/data/queue'

/** How many steps can be worked on now at each station. */
export async function seeStations(actor: Actor): Promise<Readonly<Record<string, number>>> {
  must(allow(actor, 'job.see'))
  return Object.fromEntries(await stationCounts(await db()))
}
