import { awayOn, computeRoute } from './compute-route'
import { keyText } from './keys'
import type { RouteFacts, RouteStep, Whereabouts } from './types'

/** What happens to a visit beside its steps. */
export type WhereaboutsExtra = {
  readonly arrived: boolean
  readonly onOrder: boolean
  readonly released: boolean
  readonly handedOver: boolean
  /** It goes back without further work; until it is handed over it still lies here. */
  readonly returnedAsIs: boolean
  readonly scrapped: boolean
  /** It never came, and does not come any more. Left out: no. */
  readonly takenOff?: boolean
}

/**
 * Where a head is, never set by hand: how it left us first, then where it stands, then what it waits for. A held head that
 * is at a vendor is away: nobody may forget that it is there.
 */
export function whereabouts(facts: RouteFacts, extra: WhereaboutsExtra): Whereabouts {
  if (extra.takenOff) return 'taken off'
  if (extra.scrapped) return 'scrapped'
  if (extra.handedOver) return 'handed over'
  if (extra.returnedAsIs) return 'returned as is'
  if (awayOn(facts)) return 'away'
  if (facts.openHolds.length > 0) return 'held'
  if (extra.released) return 'released'
  if (!extra.arrived) return extra.onOrder ? 'on order' : 'expected'
  const open = computeRoute(facts).filter(isOpen)
  if (open.length === 0) return 'finished'
  if (waitsForParts(facts, open)) return 'waiting for parts'
  return facts.openFindings > 0 ? 'waiting for an answer' : 'in house'
}

const isOpen = ({ stepId, state }: RouteStep): boolean =>
  stepId !== 'hand-over' && state !== 'done' && state !== 'waived' && state !== 'not needed'

const waitsForParts = ({ partsWaits }: RouteFacts, open: readonly RouteStep[]): boolean =>
  partsWaits.some((wait) => wait.open && open.some((step) => keyText(step) === keyText(wait.step)))
