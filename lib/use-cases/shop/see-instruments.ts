import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { instrumentById, listInstruments } from '@/lib/data/instruments'
import { mapPage, type Paged } from '@/lib/data/paging'
import { shopOf } from '@/lib/data/shop'

export type InstrumentSeen = {
  readonly id: string
  readonly name: string
  readonly kind: string
  readonly lastCheckedOn: string | null
  readonly dueOn: string | null
  /** Its check was due before today. */
  readonly overdue: boolean
  readonly retired: boolean
  readonly version: number
}

type Row = Awaited<ReturnType<typeof instrumentById>>

function seen(row: Row, today: string): InstrumentSeen {
  const { id, name, kind, lastCheckedOn, dueOn, version } = row
  const retired = row.retiredAt !== null
  return {
    id,
    name,
    kind,
    lastCheckedOn,
    dueOn,
    overdue: !retired && dueOn !== null && dueOn < today,
    retired,
    version,
  }
}

export async function seeInstruments(actor: Actor, now: Date, page = 1): Promise<Paged<InstrumentSeen>> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const today = dayIn((await shopOf(client)).timeZone, now)
  return mapPage(await listInstruments(client, page), (row) => seen(row, today))
}

export async function seeInstrument(actor: Actor, id: string, now: Date): Promise<{ instrument: InstrumentSeen }> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const today = dayIn((await shopOf(client)).timeZone, now)
  return { instrument: seen(await instrumentById(client, id), today) }
}
