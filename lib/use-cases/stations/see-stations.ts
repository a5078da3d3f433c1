import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { stationCounts } from '@/lib/data/queue'

/** How many steps can be worked on or are begun at each station: what its queue lists as ready and started. */
export async function seeStations(actor: Actor): Promise<Readonly<Record<string, number>>> {
  must(allow(actor, 'job.see'))
  const counts = await stationCounts(await db())
  return Object.fromEntries([...counts].map(([station, { ready, started }]) => [station, ready + started]))
}
