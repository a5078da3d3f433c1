import { mayHavePin } from '@/lib/core/access/pin-session'
import { stationNamesOf } from '@/lib/core/route/rules-words'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { activePeople } from '@/lib/data/people'
import { pinWaits } from '@/lib/data/pin-tries'
import { actorOf } from '@/lib/data/sessions'
import { currentRules } from '@/lib/data/settings'
import { noteSeen, stationOf, tabletOfToken } from '@/lib/data/tablets'

/** A time card on the rack. */
export type RackCard = {
  readonly personId: string
  readonly name: string
  readonly hasPin: boolean
  /** How long they wait after wrong PINs, ms. */
  readonly waitMs: number
}

export type Rack = {
  readonly tabletName: string
  readonly station: Station
  readonly stationName: string
  readonly cards: readonly RackCard[]
}

/** What an enrolled device shows while nobody is signed in; null: this device is no tablet, or none any more. */
export async function seeRack(token: string | null, now: Date): Promise<Rack | null> {
  const client = await db()
  const tablet = await tabletOfToken(client, token)
  if (!tablet) return null
  await noteSeen(client, tablet, now)
  const waits = await pinWaits(client, tablet.id, now)
  const station = stationOf(tablet.station)
  const cards = (await activePeople(client))
    .filter((person) => mayHavePin(actorOf(person)))
    .map(({ id, name, pinHash }) => ({
      personId: id,
      name,
      hasPin: pinHash !== null,
      waitMs: waits.get(id) ?? 0,
    }))
  const stationName = stationNamesOf(await currentRules(client))[station]
  return { tabletName: tablet.name, station, stationName, cards }
}
