import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { openStepAt, type OpenStep } from '@/lib/data/open-step'

/** Where a scanned head is worked on at this station; null: nothing of it is open there. */
export async function seeOpenStep(actor: Actor, headId: string, station: Station): Promise<OpenStep | null> {
  must(allow(actor, 'job.see'))
  return openStepAt(await db(), headId, station)
}
