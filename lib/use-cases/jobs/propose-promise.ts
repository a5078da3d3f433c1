import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, refuse } from '@/lib/core/errors'
import { routeToCome } from '@/lib/core/finish/route-to-come'
import { db } from '@/lib/data/db'
import { finishRows, type OpenRow } from '@/lib/data/finish-history'
import { currentSettings } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { finishOf } from '@/lib/dossier/finish/finish-of'
import { shopRecord } from '@/lib/dossier/finish/shop-record'
import type { ProposePromise } from '@/lib/schemas/promise'
import { basisText, longestText } from '@/lib/words/finish'

export type ProposedPromise = {
  /** Nine of ten heads like it are ready by then. */
  readonly promiseOn: string
  readonly middleOn: string
  /** What takes the most time, and what the days are drawn from. */
  readonly why: string
  readonly from: string
}

/** The day that a job with this work may be promised for, with all that stands in the shop now before it. */
export async function proposePromise(actor: Actor, input: ProposePromise, now: Date): Promise<ProposedPromise> {
  must(allow(actor, 'job.book'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const { values: settings } = await currentSettings(client)
  const { urgent, ...head } = input
  const rows = routeToCome(head, settings.rules).map(({ stepId, label, station }): OpenRow => ({
    ...{ visitId: '', kind: 'step', what: label, more: station, since: null, key: stepId, scope: 'coming' },
  }))
  const { queued, took } = await finishRows(client, { visitIds: [], rules: settings.rules, now })
  const finish = finishOf(
    {
      id: 'proposed',
      whereabouts: input.source === 'customer' ? 'expected' : 'on order',
      bookedAt: now,
      urgent,
      promiseOn: null,
    },
    rows,
    { now, timeZone, settings, queued, record: shopRecord(took, settings, timeZone) },
  )
  if (!finish) return must(refuse('unreachable', 'No day can be proposed. Check the working days in the Back room.'))
  const { nineOfTenOn, middleOn, longest, from } = finish
  return { promiseOn: nineOfTenOn, middleOn, why: longestText(longest, settings.rules), from: basisText(from) }
}
