import { cookies } from 'next/headers'
import { stations, type Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { stationOf, tabletOfToken } from '@/lib/data/tablets'
import { tabletToken } from './tablet-cookie'

/** The station last chosen on a device that is no enrolled tablet. No secret: it only says which step a scan opens. */
export const stationCookie = 'brasstag-station'

export const knownStation = (text: string | undefined): Station | null =>
  stations.find((station) => station === text) ?? null

/** The station of this device: the one it was enrolled for, else the one last chosen on it; null: neither. */
export async function deviceStation(): Promise<Station | null> {
  const tablet = await tabletOfToken(await db(), await tabletToken())
  return tablet ? stationOf(tablet.station) : knownStation((await cookies()).get(stationCookie)?.value)
}
