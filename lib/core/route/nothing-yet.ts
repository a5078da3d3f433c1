import type { RouteFacts } from './types'

/** What has happened to a head that was only just thought of: for a route that is asked about before there is a visit. */
export const nothingYet = {
  orders: [],
  events: [],
  readings: [],
  partsWaits: [],
  openHolds: [],
  openFindings: 0,
} as const satisfies Partial<RouteFacts>
