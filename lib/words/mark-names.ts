import type { HeadMark } from '../core/route/head-marks'

/** What is odd about a head in a word or two, for a place that has no room for more. */
export const markName: Readonly<Record<HeadMark['code'], string>> = {
  urgent: 'urgent',
  held: 'held',
  comeback: 'comeback',
  rework: 'rework',
  finding: 'finding open',
  out: 'out of tolerance',
  'mate-held': 'mate held',
}
