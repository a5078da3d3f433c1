import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { routeChanges } from '@/lib/words/route-changes'
import { stationName } from '@/lib/core/route/rules-words'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { visitsBehind } from '@/lib/data/open-visits'
import { currentSettings, settingsOfVisits } from '@/lib/data/settings'
import { withRoute } from '@/lib/data/visits'

export type HeadBehind = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  /** What would become of its route, a line each; none: only its figures' limits are newer. */
  readonly changes: readonly string[]
}

export type RulesPreview = { readonly version: number; readonly heads: readonly HeadBehind[] }

/** What the newest limits and steps would make of each head that follows older ones. Nothing is changed by looking. */
export async function seeRulesPreview(actor: Actor): Promise<RulesPreview> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { version, values } = await currentSettings(client)
  const visits = await visitsBehind(client, version)
  const settingsOf = await settingsOfVisits(client, visits)
  const heads = visits.map((visit) => ({
    visitId: visit.id,
    headId: visit.headId,
    tag: headName(visit.head.tags, visit.job.number, visit.position),
    jobNumber: visit.job.number,
    changes: routeChanges(withRoute(visit, settingsOf(visit)).route, withRoute(visit, values).route, (station) =>
      stationName(station, values.rules),
    ),
  }))
  return { version, heads }
}
