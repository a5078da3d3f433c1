import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { listInstruments } from '@/lib/data/instruments'
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

export async function seeInstruments(actor: Actor, now: Date): Promise<InstrumentSeen[]> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const today = dayIn(timeZone, now)
  const rows = await listInstruments(client)
  const seen = rows.map(({ id, name, kind, lastCheckedOn, dueOn, retiredAt, version }) => {
    const retired = retiredAt !== null
    const overdue = !retired && dueOn !== null && dueOn < today
    return { id, name, kind, lastCheckedOn, dueOn, overdue, retired, version }
  })
  return [...seen.filter(({ retired }) => !retired), ...seen.filter(({ retired }) => retired)]
}
