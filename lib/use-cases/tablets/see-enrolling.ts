import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { currentRules } from '@/lib/data/settings'
import { localHostName, shopAddress } from '@/lib/data/shop-address'

/** Where a tablet may stand, and the page that it opens to type its code. */
export type Enrolling = {
  readonly stationNames: Readonly<Record<Station, string>>
  readonly address: string
  /** No other device can open the address yet. */
  readonly isLocal: boolean
}

export async function seeEnrolling(actor: Actor): Promise<Enrolling> {
  must(allow(actor, 'tablet.change'))
  const stationNames = stationNamesOf(await currentRules(await db()))
  return { stationNames, address: `${shopAddress()}/tablet`, isLocal: localHostName() !== '' }
}
