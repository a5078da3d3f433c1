import type { HeadMark, Rework } from '../core/route/head-marks'
import { lackText } from './lacks'
import { orderText } from './route'

/** What is to be put right, and of what: "rework: weld the crack", "rework of Northgate, order O-0004: insert stands proud". */
export const reworkText = (rework: Rework): string =>
  rework.from === 'owner'
    ? `rework, as the owner decided${rework.text === '' ? '' : `: ${rework.text}`}`
    : `rework of ${orderText(rework.order)}: ${rework.text}`

/** What is odd about a head, in a line. */
export function markText(mark: HeadMark): string {
  switch (mark.code) {
    case 'urgent':
      return 'urgent'
    case 'held':
      return `held: ${mark.reason}`
    case 'comeback':
      return `comeback: ${comebackText(mark)}`
    case 'rework':
      return reworkText(mark.rework)
    case 'finding':
      return `finding not answered yet: ${mark.what}`
    case 'out':
      return `out of tolerance: ${lackText(mark.lack)}`
    case 'mate-held':
      return `its mate ${mark.tag} is held`
  }
}

/** Why it came back, and who pays. */
export const comebackText = ({ cause, pays }: { readonly cause: string; readonly pays: string }): string =>
  `${cause === '' ? 'cause not known yet' : cause}; paid by: ${pays === '' ? 'not said yet' : pays}`

/** The same in a word or two, for a place that has no room for more. */
export const markName: Readonly<Record<HeadMark['code'], string>> = {
  urgent: 'urgent',
  held: 'held',
  comeback: 'comeback',
  rework: 'rework',
  finding: 'finding open',
  out: 'out of tolerance',
  'mate-held': 'mate held',
}
