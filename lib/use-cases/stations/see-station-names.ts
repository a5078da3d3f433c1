import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { currentRules } from '@/lib/data/settings'

/** What the shop calls its stations now. */
export async function seeStationNames(actor: Actor): Promise<Readonly<Record<Station, string>>> {
  must(allow(actor, 'job.see'))
  return stationNamesOf(await currentRules(await db()))
}
