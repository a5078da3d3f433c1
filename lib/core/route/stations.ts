import type { Station } from './step-ids'

/** What the shop calls its stations when it starts; in the order a head meets them. */
export const stationLabels: Record<Station, string> = {
  'front-desk': 'Front desk',
  wash: 'Wash',
  'measuring-bench': 'Measuring bench',
  'flow-bench': 'Flow bench',
  'port-bench': 'Port bench',
  'deck-mill': 'Deck mill',
  'intake-mill': 'Intake mill',
  'bolt-bench': 'Bolt bench',
  'seat-machine': 'Seat machine',
  assembly: 'Assembly',
  outside: 'Other benches and vendors',
}
