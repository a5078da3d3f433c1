import { addDays, dayIn } from '@/lib/core/shop/calendar'
import type { FloorVisit } from '@/lib/data/floor'

/** Which open jobs the counter shows. */
export const workFilters = ['all', 'due', 'risk', 'away', 'answer', 'ready', 'uncollected'] as const
export type WorkFilter = (typeof workFilters)[number]

export const isWorkFilter = (text: string): text is WorkFilter => workFilters.some((filter) => filter === text)

/** So long a finished head may stand here before somebody asks after it. */
export const uncollectedDays = 14

/** Nothing is left to do on it but to hand it over. */
export const isToCollect = ({ whereabouts }: FloorVisit): boolean =>
  whereabouts === 'released' || whereabouts === 'returned as is'

type Asked = {
  readonly today: string
  readonly timeZone: string
  readonly isAtRisk: (jobId: string) => boolean
}

/** Whether a job, by its heads that have not left, belongs under each of them. */
export function filtersOf(
  visits: readonly FloorVisit[],
  { today, timeZone, isAtRisk }: Asked,
): ReadonlySet<WorkFilter> {
  const found = new Set<WorkFilter>(['all'])
  const [first] = visits
  if (!first) return found
  const isReady = visits.every(isToCollect)
  if (!isReady && first.promiseOn !== null && first.promiseOn <= addDays(today, 6)) found.add('due')
  if (isAtRisk(first.jobId)) found.add('risk')
  if (visits.some(({ whereabouts }) => whereabouts === 'away')) found.add('away')
  if (visits.some(({ whereabouts }) => whereabouts === 'waiting for an answer')) found.add('answer')
  if (isReady) found.add('ready')
  const old = addDays(today, -uncollectedDays)
  const isOld = (visit: FloorVisit): boolean => isToCollect(visit) && dayIn(timeZone, visit.changedAt) < old
  if (visits.some(isOld)) found.add('uncollected')
  return found
}
