import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { routeChanges } from '@/lib/words/route-changes'
import { stationName } from '@/lib/core/route/rules-words'
import { db } from '@/lib/data/db'
import { visitIdsBehind } from '@/lib/data/open-visits'
import { currentSettings } from '@/lib/data/settings'
import { dossierOf, loadDossiers } from '@/lib/dossier/dossier'

export type HeadBehind = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  /** What would become of its route, a line each; none: only its figures' limits are newer. */
  readonly changes: readonly string[]
}

export type RulesPreview = {
  readonly version: number
  readonly heads: readonly HeadBehind[]
  /** Whether another page follows. */
  readonly more: boolean
}

/** What the newest limits and steps would make of each head that follows older ones. Nothing is changed by looking. */
export async function seeRulesPreview(actor: Actor, page = 1): Promise<RulesPreview> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { version, values } = await currentSettings(client)
  const { rows: ids, more } = await visitIdsBehind(client, version, page)
  const behind = new Map((await loadDossiers(client, { ids })).map((dossier) => [dossier.visit.id, dossier]))
  const heads = ids
    .flatMap((id) => behind.get(id) ?? [])
    .map((dossier) => ({
      visitId: dossier.visit.id,
      headId: dossier.visit.headId,
      tag: dossier.label,
      jobNumber: dossier.visit.job.number,
      changes: routeChanges(dossier.route, dossierOf(dossier.visit, values, dossier.today, dossier).route, (station) =>
        stationName(station, values.rules),
      ),
    }))
  return { version, heads, more }
}
