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

/** With a full stop, where the words typed have none. */
const sentence = (words: string): string => (/[.!?]$/.test(words.trim()) ? words.trim() : `${words.trim()}.`)

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`

/**
 * What is odd, as a sentence for whoever does a step: "Finding reported: guide 2 is loose. Not answered yet."; null for what
 * has a notice of its own there (hold, mate, tolerance) or is no more than a word.
 */
export function noticeLine(mark: HeadMark): string | null {
  switch (mark.code) {
    case 'rework':
      return sentence(capital(reworkText(mark.rework)))
    case 'comeback':
      return sentence(`Comeback: ${comebackText(mark)}`)
    case 'finding':
      return `Finding reported: ${sentence(mark.what)} Not answered yet.`
    default:
      return null
  }
}

/** Why it came back, and who pays. */
export const comebackText = ({ cause, pays }: { readonly cause: string; readonly pays: string }): string =>
  `${cause === '' ? 'cause not known yet' : cause}; paid by: ${pays === '' ? 'not said yet' : pays}`
