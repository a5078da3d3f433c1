import { RefusedError } from '@/lib/core/errors'
import { stations, type Station } from '@/lib/core/route/step-ids'

/** The station that an address names. */
export function stationOf(text: string): Station {
  const station = stations.find((one) => one === text)
  if (station) return station
  throw new RefusedError({ code: 'not-found', message: 'This station does not exist.' })
}
