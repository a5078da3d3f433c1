import type { RouteStep, Whereabouts } from './types'

/** Where a step stands in its station's queue; '' when it is in none. */
export type QueuePlace = 'ready' | 'started' | 'coming' | ''

const left: readonly Whereabouts[] = ['released', 'handed over', 'returned as is', 'scrapped', 'taken off']
const outOfReach: readonly Whereabouts[] = ['on order', 'away', 'held']
const free: readonly Whereabouts[] = ['expected', 'in house', 'finished']

/**
 * The one rule for what counts at a station: a step counts when it is ready or started. Nobody can start or go on with a
 * head that is on order, away or held; its open steps are coming. Settled steps, and those of a head that has left, are in
 * no queue.
 *
 * Example: chambers to do, wash not done → coming; wash done → ready; the head goes on hold → coming.
 */
export function queuePlace({ state, waitsFor }: Pick<RouteStep, 'state' | 'waitsFor'>, where: Whereabouts): QueuePlace {
  if (state === 'done' || state === 'waived' || state === 'not needed' || left.includes(where)) return ''
  if (state === 'started') return outOfReach.includes(where) ? 'coming' : 'started'
  return waitsFor.length === 0 && free.includes(where) ? 'ready' : 'coming'
}
