import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import type { Station } from '@/lib/core/route/step-ids'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import { namesOf } from '@/lib/data/people'
import { currentRules } from '@/lib/data/settings'
import { listTablets, stationOf, tabletById } from '@/lib/data/tablets'

export type TabletSeen = {
  readonly id: string
  readonly name: string
  readonly station: Station
  /** What the shop calls it. */
  readonly stationName: string
  readonly enrolledAt: Date
  readonly by: string
  readonly lastSeenAt: Date
  readonly revoked: boolean
  readonly version: number
}

type Row = Awaited<ReturnType<typeof tabletById>>
type Names = Readonly<Record<Station, string>>

/** Everything but the hash of its token. */
function seen(row: Row, stationNames: Names, people: ReadonlyMap<string, string>): TabletSeen {
  const { id, name, enrolledAt, lastSeenAt, version } = row
  const station = stationOf(row.station)
  const by = people.get(row.byId) ?? ''
  return {
    ...{ id, name, station, enrolledAt, lastSeenAt, version, by },
    stationName: stationNames[station],
    revoked: row.revokedAt !== null,
  }
}

export async function seeTablets(actor: Actor, page = 1): Promise<Paged<TabletSeen>> {
  must(allow(actor, 'tablet.change'))
  const client = await db()
  const found = await listTablets(client, page)
  const names = stationNamesOf(await currentRules(client))
  const people = await namesOf(found.rows.map(({ byId }) => byId))
  return mapPage(found, (row) => seen(row, names, people))
}

export async function seeTablet(
  actor: Actor,
  tabletId: string,
): Promise<{ readonly tablet: TabletSeen; readonly last: LastChange | null }> {
  must(allow(actor, 'tablet.change'))
  const client = await db()
  const row = await tabletById(client, tabletId)
  const names = stationNamesOf(await currentRules(client))
  const tablet = seen(row, names, await namesOf([row.byId]))
  return { tablet, last: await lastChange(client, 'tablet', tabletId) }
}
